// How long each stop was repaired in the observed time, and how far the clock came that the stop counts on.
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import type { LoggedStop, StopLog } from "#engine/run/stopLog.ts";
import type { Scenario, StopSpec } from "#scenario/scenario.ts";
import type { CellRecord, StopExposure } from "#cell/records/cellRecord.ts";
import { PLASTICATOR, VALVE } from "#cell/words/cycleNames.ts";

interface Observed extends Pick<CellRecord, "stations" | "stateTimes"> {
  readonly from: number;
  readonly until: number;
}

/** In the order of the scenario's stops. */
export function stopExposures(
  { stops = [] }: Scenario,
  { records, carried }: Pick<StopLog, "records" | "carried">,
  observed: Observed,
): readonly StopExposure[] {
  return stops.map((stop, index) => {
    const own = [...carried, ...records].filter((each) => each.stop === index);
    const within = (begin: number | null, end: number | null): number =>
      begin === null ? 0 : Math.max(0, (end ?? observed.until) - Math.max(begin, observed.from));
    const sum = (of: (logged: LoggedStop) => number): number => own.reduce((total, each) => total + of(each), 0);
    const stopped = sum(({ begin, end }) => within(begin, end));
    return {
      repairSeconds: sum(({ repair, end }) => within(repair, end)) / TICKS_PER_SECOND,
      clock: clockOf(stop, stopped, observed),
    };
  });
}

/** The clock of a stop rests during the stop itself. */
function clockOf({ comes, resource }: StopSpec, stopped: number, observed: Observed): number | null {
  const { from, until, stations, stateTimes } = observed;
  if (comes.by === "calendar") return (until - from - stopped) / TICKS_PER_SECOND;
  if (comes.by === "working") {
    const working = stateTimes.filter((time) => time.resource === resource && time.kind === "working");
    return working.reduce((sum, { ticks }) => sum + ticks, 0) / TICKS_PER_SECOND;
  }
  const isCellWide = resource === PLASTICATOR || resource === VALVE;
  const counted = isCellWide ? stations : stations.filter(({ name }) => name === resource);
  return counted.length === 0 ? null : counted.reduce((sum, { shots }) => sum + shots, 0);
}
