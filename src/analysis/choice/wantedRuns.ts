// The replications that a choice wants next.
import type { ReplicationTask } from "#analysis/replication/replicationAnswer.ts";
import { firstReplications, progressOf, screened, tasksOf, type ChoiceState } from "./choice.ts";
import { concludeChoice } from "./concludeChoice.ts";

export interface WantedRuns {
  /** Number of the layout. */
  readonly index: number;
  readonly tasks: readonly ReplicationTask[];
}

/**
 * None when the choice is finished. First all layouts get the first stage, without those that clearly cannot meet the need; then the
 * selection goes on, and the need of the layout that it selects is tested. Where that one cannot meet it, the selection is made again
 * without it. At the end the next simpler layout is tested, so that it is one that meets the need.
 */
export function choiceWanted(state: ChoiceState): readonly WantedRuns[] {
  const { selection, screening, active, barred } = progressOf(state);
  const made = active.map((i) => state.courses[i]!.observations.length);
  const candidates = active.map((_, place) => place).filter((place) => !barred.includes(place));
  const isOpen = (place: number): boolean => screening?.verdicts[place]?.kind === "open";
  const toFirst = (place: number): number => firstReplications - made[place]!;
  const isScreening = candidates.some((place) => isOpen(place) && toFirst(place) > 0);
  const tested = selection?.kind === "selected" ? testedPlace(state, selection.layout, isOpen) : undefined;
  const wanted = (place: number): number => {
    if (isScreening) return isOpen(place) ? Math.min(screening?.more ?? 0, toFirst(place)) : 0;
    if (selection === undefined) return toFirst(place);
    if (selection.kind !== "running") return place === tested ? moreToTest(state, active, place) : 0;
    return selection.survivors.includes(place) ? selection.replications + selection.more - made[place]! : 0;
  };
  return candidates.flatMap((place) => {
    const [from, count] = [made[place]!, wanted(place)];
    return count <= 0 ? [] : [{ index: active[place]!, tasks: tasksOf(from, from + count) }];
  });
}

/** The selected layout, then the next simpler one. */
function testedPlace(state: ChoiceState, selected: number, isOpen: (place: number) => boolean): number | undefined {
  if (state.goal.need === null) return undefined;
  if (isOpen(selected)) return selected;
  const simpler = concludeChoice(state).simpler?.ranked.layout;
  const { active } = progressOf(state);
  return active
    .map((_, place) => place)
    .find((place) => state.courses[active[place]!]!.layout === simpler && isOpen(place));
}

/** Until the test of this layout alone may end. */
function moreToTest({ courses, goal }: ChoiceState, active: readonly number[], place: number): number {
  return screened([courses[active[place]!]!.observations], goal, active.length)?.more ?? 0;
}
