// When a line delivered its shots, by the step that stands for them.
import { hasRole } from "#cell/words/cellTable.ts";
import type { CellPlan } from "#cell/layers/planCell.ts";
import type { Cell, Doing, Mark } from "./doing.ts";
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

/** The shots of all stations in their order, each by itself where the line keeps each by itself. */
export function allShots(stretch: Stretch, anchors: readonly Anchor[], of: "inLog" | "inModel"): readonly Mark[] {
  return anchors
    .flatMap((anchor) => shotsOf(stretch, anchor.station, anchor[of])?.marks() ?? [])
    .toSorted((one, other) => one.time - other.time);
}

export function shotsOf({ doings }: Stretch, station: string, step: string): Doing | undefined {
  return doings.get(doingKey(station, step));
}

export function gapsOf(marks: readonly Mark[]): readonly Cell[] {
  return marks.slice(1).map(({ time, count }, i) => ({ sum: time - marks[i]!.time, count }));
}

/** Half of the time in which any station is seen, all are: only then can their shots be counted together. */
const SEEN_TOGETHER = 0.5;

export function areSeenTogether(log: readonly Stretch[], anchors: readonly Anchor[]): boolean {
  return log.every((stretch) => {
    const seen = anchors
      .map(({ station, inLog }) => shotsOf(stretch, station, inLog))
      .filter((shots) => shots !== undefined && shots.count > 1);
    const [starts, ends] = [seen.map((shots) => shots!.first), seen.map((shots) => shots!.last)];
    const together = Math.min(...ends) - Math.max(...starts);
    return seen.length < 2 || together >= SEEN_TOGETHER * (Math.max(...ends) - Math.min(...starts));
  });
}
