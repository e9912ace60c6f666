// The record of one replication as spells: for each resource the states that last, each from its beginning to its end.
import { eventRecorder, type EventRecord } from "#cell/records/eventRecord.ts";
import type { Scenario } from "#scenario/scenario.ts";

export interface Spell extends Pick<
  EventRecord,
  "resource" | "owner" | "state" | "kind" | "role" | "station" | "shot"
> {
  /** Seconds since the start of the replication. */
  readonly start: number;
  /** Null where the record ends first. */
  readonly end: number | null;
  /** The resource whose step ended last of all that the start needed; null where nothing had to be waited for. */
  readonly startedBy: string | null;
  /** The same for the start of what follows. */
  readonly freedBy: string | null;
}

/** A cell that has run once. */
export interface CellRun {
  readonly scenario: Scenario;
  readonly events: readonly EventRecord[];
  readonly spells: readonly Spell[];
}

/** Runs the first replication. */
export function runOnce(scenario: Scenario): CellRun {
  const events = [...eventRecorder(scenario)(1)];
  return { scenario, events, spells: spellsOf(events) };
}

/** In the order of their beginnings. A state that is left in the instant in which it began is no spell. */
function spellsOf(events: readonly EventRecord[]): readonly Spell[] {
  const rows = new Map<string, EventRecord[]>();
  for (const event of events) {
    const own = rows.get(event.resource);
    if (own === undefined) rows.set(event.resource, [event]);
    else own.push(event);
  }
  const spells = [...rows.values()].flatMap((own) => {
    const starts = own.flatMap((_, i) => (begins(own, i) ? [i] : []));
    return starts.map((start, i) => spellOf(own, start, starts[i + 1]));
  });
  return spells.toSorted((one, other) => one.start - other.start);
}

/** A stop of a resource may write its running step anew: the same state, and nothing had to end for it. */
function begins(own: readonly EventRecord[], index: number): boolean {
  const row = own[index]!;
  if (own[index + 1]?.seconds === row.seconds) return false;
  let before = index - 1;
  while (own[before]?.seconds === row.seconds) before--;
  return row.boundByResource !== null || own[before]?.state !== row.state;
}

function spellOf(own: readonly EventRecord[], index: number, next: number | undefined): Spell {
  const { resource, owner, state, kind, role, station, shot, seconds } = own[index]!;
  const end = next === undefined ? null : own[next]!.seconds;
  const startedBy = boundAt(own, index, -1) ?? null;
  const freedBy = next === undefined ? null : (boundAt(own, next, -1) ?? boundAt(own, next, 1) ?? null);
  return { resource, owner, state, kind, role, station, shot, start: seconds, end, startedBy, freedBy };
}

/** The completion that bound a row of this instant; states that last no time may stand between. */
function boundAt(own: readonly EventRecord[], index: number, step: 1 | -1): string | undefined {
  const { seconds } = own[index]!;
  for (let i = index; own[i]?.seconds === seconds; i += step) {
    const bound = own[i]!.boundByResource;
    if (bound !== null) return bound;
  }
  return undefined;
}
