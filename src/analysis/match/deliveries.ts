// When a line delivered its shots, by the step that stands for them.
import { hasRole } from "#cell/words/cellTable.ts";
import type { CellPlan } from "#cell/layers/planCell.ts";
import { doingKey, type Stretch } from "./lineLog.ts";

/** One time of this step is one shot of this station. */
export interface Anchor {
  readonly station: string;
  readonly inLog: string;
  readonly inModel: string;
}

/** Name of a log's rows that hold a whole cycle. */
const WHOLE_CYCLE = "cycle";

/** Of each station that the log and the model have: the drop, else the close, else the first step that both have. */
export function anchorsOf(
  { scenario, processes, stationProcess }: CellPlan,
  log: readonly Stretch[],
): readonly Anchor[] {
  const isLogged = (station: string, name: string): boolean =>
    log.some(({ doings }) => doings.has(doingKey(station, name)));
  return scenario.stations.flatMap(({ name: station }, k): readonly Anchor[] => {
    const timed = processes[stationProcess[k]!]!.steps.filter(({ time }) => time !== undefined);
    const preferred = [
      ...timed.filter((step) => hasRole(step, "mold.drop")),
      ...timed.filter((step) => hasRole(step, "mold.close")),
      ...timed,
    ].map(({ name }) => name);
    const shared = preferred.find((name) => isLogged(station, name));
    if (shared !== undefined) return [{ station, inLog: shared, inModel: shared }];
    return isLogged(station, WHOLE_CYCLE) ? [{ station, inLog: WHOLE_CYCLE, inModel: preferred[0]! }] : [];
  });
}

export function shotsOf({ doings }: Stretch, station: string, step: string): readonly number[] {
  return doings.get(doingKey(station, step))?.starts ?? [];
}

/** The shots of all stations in their order. */
export function allShots(stretch: Stretch, anchors: readonly Anchor[], of: "inLog" | "inModel"): readonly number[] {
  return anchors.flatMap((anchor) => shotsOf(stretch, anchor.station, anchor[of])).toSorted((a, b) => a - b);
}

export function gapsOf(times: readonly number[]): readonly number[] {
  return times.slice(1).map((time, i) => time - times[i]!);
}

/** Half of the time in which any station is seen, all are: only then can their shots be counted together. */
const SEEN_TOGETHER = 0.5;

export function areSeenTogether(log: readonly Stretch[], anchors: readonly Anchor[]): boolean {
  return log.every((stretch) => {
    const seen = anchors
      .map(({ station, inLog }) => shotsOf(stretch, station, inLog))
      .filter(({ length }) => length > 1);
    const [starts, ends] = [seen.map((times) => times[0]!), seen.map((times) => times.at(-1)!)];
    const together = Math.min(...ends) - Math.max(...starts);
    return seen.length < 2 || together >= SEEN_TOGETHER * (Math.max(...ends) - Math.min(...starts));
  });
}
