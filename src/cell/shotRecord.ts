// Every shot of one replication with the start of each of its steps, gathered from its events, and what its parison went through.
import { deliveredSag } from "#physics/deliveredSag.ts";
import type { Scenario, StationSpec } from "#scenario/scenario.ts";
import type { EventRecord } from "./eventRecord.ts";
import { maskOf, PLASTICATOR } from "./cycleNames.ts";
import { passageOf, type MeltPassage } from "./meltPassage.ts";
import { sagInput } from "./sagInput.ts";
import { shotMass } from "./shotMass.ts";

export interface ShotRecord {
  readonly station: string;
  readonly shot: number;
  /** Seconds from the start of the replication; a shot under way at the end lacks its last steps. */
  readonly starts: ReadonlyMap<string, number>;
  /** Seconds from the end of the drop, or from a growing parison's full length, to the closed mold; null where the mold did not close before the end. */
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
  /** Of a die that never stops: when the parison that the mold closed on had begun, and when it had its full length. */
  grown: Grown | undefined;
}

interface Grown {
  readonly begun: number;
  readonly full: number;
}

/** In the order in which the valve shifted for them. */
export function shotRecords(events: Iterable<EventRecord>, scenario: Scenario): readonly ShotRecord[] {
  const shots = new Map<string, Growing>();
  const die = new Die();
  for (const { resource, state, kind, step, station, shot, seconds } of events) {
    if (resource === PLASTICATOR) die.enter(state, seconds);
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
    if (step === "close") record.grown = die.parison;
    if (record.starts.has(step)) continue;
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

/** What hangs at a die that never stops, as its states tell; nothing at any other. */
class Die {
  #begun: number | undefined;
  #full: number | undefined;

  enter(state: string, seconds: number): void {
    if (state === "extruding to regrind") this.#full = seconds;
    if (state === "extruding a parison") {
      this.#begun = seconds;
      this.#full = undefined;
    }
  }

  get parison(): Grown | undefined {
    const [begun, full] = [this.#begun, this.#full];
    return begun === undefined || full === undefined ? undefined : { begun, full };
  }
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
    const [seconds, station] = [shot.ends.get("drop"), stations.get(shot.station)];
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
    grown?.begun ?? starts.get("drop"),
    grown?.full ?? ends.get("drop"),
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
