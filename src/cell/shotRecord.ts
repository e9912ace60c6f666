// Every shot of one replication with the start of each of its steps, gathered from its events.
import type { EventRecord } from "./eventRecord.ts";

export interface ShotRecord {
  readonly station: string;
  readonly shot: number;
  /** Seconds from the start of the replication; a shot under way at the end lacks its last steps. */
  readonly starts: ReadonlyMap<string, number>;
}

/** In the order in which the valve shifted for them. */
export function shotRecords(events: Iterable<EventRecord>): readonly ShotRecord[] {
  const shots = new Map<string, ShotRecord & { readonly starts: Map<string, number> }>();
  for (const { resource, kind, step, station, shot, seconds } of events) {
    if (resource !== station || shot === null || step === null || kind !== "working") continue;
    const key = `${shot} ${station}`;
    const record = shots.get(key) ?? { station, shot, starts: new Map<string, number>() };
    shots.set(key, record);
    if (!record.starts.has(step)) record.starts.set(step, seconds);
  }
  return [...shots.values()];
}
