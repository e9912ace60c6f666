// The spells of a record that fit a pattern, and the one that a moment of a lesson is.
import type { MomentSpec, SpellPattern } from "./lesson.ts";
import type { CellRun, Spell } from "./spells.ts";

/** In the order of their beginnings. */
export function findSpells(pattern: SpellPattern, { spells }: Pick<CellRun, "spells">): readonly Spell[] {
  const { resource, of, state, kind, station, shot, lasts = 0 } = pattern;
  return spells.filter(
    (spell) =>
      (resource === undefined || spell.resource === resource) &&
      (of === undefined || spell.owner === of) &&
      (state === undefined || spell.state === state) &&
      (kind === undefined || spell.kind === kind) &&
      (station === undefined || spell.station === station) &&
      (shot === undefined || spell.shot === shot) &&
      (spell.end ?? Infinity) - spell.start >= lasts,
  );
}

/** Undefined where the record holds no such moment. `since`: seconds before which nothing counts. */
export function findMoment({ occurrence, ...pattern }: MomentSpec, run: CellRun, since: number): Spell | undefined {
  return findSpells(pattern, run).filter(({ start }) => start >= since)[occurrence - 1];
}
