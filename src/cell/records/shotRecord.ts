// Every shot of one replication with the start of each of its steps, gathered from its events, and what its parison went through.
import { deliveredSag } from "#physics/parison/deliveredSag.ts";
import type { Scenario, StationSpec } from "#scenario/scenario.ts";
import type { EventRecord } from "./eventRecord.ts";
import { maskOf } from "#cell/words/cycleNames.ts";
import { passageOf, type MeltPassage } from "./meltPassage.ts";
import { sagInput } from "./sagInput.ts";
import { shotMass } from "#cell/table/shotMass.ts";

export interface ShotRecord {
  readonly station: string;
  readonly shot: number;
  /** Seconds from the start of the replication; a shot under way at the end lacks its last steps. */
  readonly starts: ReadonlyMap<string, number>;
  /** Seconds from the end of the drop, or from the catch of a growing parison, to the closed mold; null where the mold did not close before the end. */
  readonly hang: number | null;
  /** Share by which the parison had grown longer by then; null where material or parison length are not given. */
  readonly sag: number | null;
  /** Seconds at heat when it left the die; null where it was in the machine at the start, or its hold-up is not given. */
  readonly timeAtHeat: number | null;
}

interface Growing {
  readonly station: string;
  readonly shot: number;
  readonly starts: Map<string, number>;
  /** Ends of the steps, as the next one of the same shot begins. */
  readonly ends: Map<string, number>;
  last: string;
  /** Of a die that never stops, where a parison grows from the catch before to its own: seconds of both. */
  grown: { readonly begun: number | undefined; readonly caught: number } | undefined;
}

/** In the order in which the valve shifted for them. */
export function shotRecords(events: Iterable<EventRecord>, scenario: Scenario): readonly ShotRecord[] {
  const shots = new Map<string, Growing>();
  const isContinuous = scenario.delivery.kind === "continuous";
  let caught: number | undefined;
  for (const { resource, kind, step, station, shot, seconds } of events) {
    if (
      station === null ||
      (resource !== station && resource !== maskOf(station)) ||
      shot === null ||
      step === null ||
      kind !== "working"
    )
      continue;
    const key = `${shot} ${station}`;
    const record: Growing = shots.get(key) ?? newShot(station, shot, step);
    shots.set(key, record);
    if (record.starts.has(step)) continue;
    if (isContinuous && step === "close") {
      record.grown = { begun: caught, caught: seconds };
      caught = seconds;
    }
    // What is cleared away broke off before its end.
    if (record.last !== step && step !== "clear") record.ends.set(record.last, seconds);
    record.starts.set(step, seconds);
    record.last = step;
  }
  const stations = new Map(scenario.stations.map((each) => [each.name, each]));
  const atHeat = timesAtHeat([...shots.values()], stations, passageOf(scenario.stations));
  return [...shots.values()].map((shot) => told(shot, stations.get(shot.station), atHeat.get(shot) ?? null));
}

function newShot(station: string, shot: number, last: string): Growing {
  return { station, shot, starts: new Map(), ends: new Map(), last, grown: undefined };
}

type Stations = ReadonlyMap<string, StationSpec>;

/** In the order in which they left the machine. */
function timesAtHeat(
  shots: readonly Growing[],
  stations: Stations,
  passage: MeltPassage | undefined,
): ReadonlyMap<Growing, number | null> {
  if (!passage) return new Map();
  const left = shots.flatMap((shot) => {
    const [seconds, station] = [shot.grown?.caught ?? shot.ends.get("drop"), stations.get(shot.station)];
    return seconds === undefined || station === undefined ? [] : [{ shot, seconds, mass: shotMass(station) }];
  });
  return new Map(
    left
      .toSorted((one, other) => one.seconds - other.seconds)
      .map(({ shot, seconds, mass }) => [shot, passage.deliver(seconds, mass)]),
  );
}

function told(
  { station, shot, starts, ends, grown }: Growing,
  spec: StationSpec | undefined,
  timeAtHeat: number | null,
): ShotRecord {
  const [begun, delivered, closed] = [
    grown ? grown.begun : starts.get("drop"),
    grown ? grown.caught : ends.get("drop"),
    ends.get("close"),
  ];
  if (begun === undefined || delivered === undefined || closed === undefined)
    return { station, shot, starts, hang: null, sag: null, timeAtHeat };
  const hold = closed - delivered;
  const hanging = spec && sagInput(spec);
  const sag = hanging
    ? deliveredSag(hanging.melt, { length: hanging.length, delivery: delivered - begun, hold })
    : null;
  return { station, shot, starts, hang: hold, sag, timeAtHeat };
}
