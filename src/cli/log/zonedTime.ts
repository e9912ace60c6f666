// Turns local times of a named zone into instants, also across a change of daylight time.
import { DateTime, IANAZone } from "luxon";
import type { Offset, Zone } from "#analysis/log/logTimes.ts";

/** Offsets change only at a multiple of this many seconds of local time. */
const QUARTER = 900;

/** Undefined where no zone has that name. */
export function zoneNamed(name: string): Zone | undefined {
  if (!IANAZone.isValidZone(name)) return undefined;
  const offsets = new Map<number, Offset>();
  const zone = IANAZone.create(name);
  return {
    offsetAt: (seconds) => -zone.offset(Math.floor(seconds / QUARTER) * QUARTER * 1000) * 60,
    offset: (localSeconds) => {
      const quarter = Math.floor(localSeconds / QUARTER);
      const known = offsets.get(quarter) ?? offsetOf(quarter * QUARTER, name);
      offsets.set(quarter, known);
      return known;
    },
  };
}

/** Of an hour that comes twice both offsets, of one that is skipped the offset before. */
function offsetOf(localSeconds: number, name: string): Offset {
  const { year, month, day, hour, minute } = DateTime.fromSeconds(localSeconds, { zone: "utc" });
  const wanted = { year, month, day, hour, minute };
  const time = DateTime.fromObject(wanted, { zone: name });
  if (time.hour !== hour || time.minute !== minute) {
    const before = DateTime.fromObject(wanted, { zone: name }).minus({ hours: 3 });
    return { seconds: -before.offset * 60, clash: "never" };
  }
  const possible = time.getPossibleOffsets().map(({ offset }) => offset);
  if (possible.length < 2) return { seconds: -time.offset * 60 };
  return { seconds: -Math.max(...possible) * 60, later: -Math.min(...possible) * 60, clash: "twice" };
}
