// Every shot of one replication with the start of each of its steps, gathered from its events, and what its parison went through.
import { deliveredSag } from "#physics/parison/deliveredSag.ts";
import type { Scenario, StationSpec } from "#scenario/scenario.ts";
import type { StepRole } from "#cell/words/stepNames.ts";
import type { EventRecord } from "./eventRecord.ts";
import { passageOf, type MeltPassage } from "./meltPassage.ts";
import { sagInput, type SagInput } from "./sagInput.ts";
import { shotMass } from "#cell/table/shotMass.ts";

export interface ShotRecord {
  readonly station: string;
  readonly shot: number;
  /** By the step's name, seconds from the start of the replication; a shot under way at the end lacks its last steps. */
  readonly starts: ReadonlyMap<string, number>;
  /** Seconds from the end of the drop, or from the catch of a growing parison, to the closed mold; null where the mold did not close before the end. */
  readonly hang: number | null;
  /** Share by which the parison had grown longer by then; null where material or parison length are not given. */
  readonly sag: number | null;
  /** Seconds at heat when it left the die; null where it was in the machine at the start, or its hold-up is not given. */
  readonly timeAtHeat: number | null;
}

interface Growing extends Pick<ShotRecord, "station" | "shot"> {
  readonly starts: Map<string, number>;
  /** The step that began last. */
  last: { readonly step: string; readonly role: StepRole | null };
  /** Seconds at which the parison was begun and delivered, and at which the mold had closed on it. */
  begun: number | undefined;
  delivered: number | undefined;
  closed: number | undefined;
}

/** In the order in which the valve shifted for them. */
export function shotRecords(events: Iterable<EventRecord>, scenario: Scenario): readonly ShotRecord[] {
  const shots = new Map<string, Growing>();
  const isContinuous = scenario.delivery.kind === "continuous";
  // In continuous extrusion a parison grows from the catch before to its own.
  let caught: number | undefined;
  for (const { owner, kind, step, role, station, shot, seconds } of events) {
    const isOfMold = owner === "station" || owner === "mask";
    if (!isOfMold || station === null || shot === null || step === null || kind !== "working") continue;
    const key = `${shot} ${station}`;
    const record: Growing = shots.get(key) ?? newShot(station, shot, { step, role });
    shots.set(key, record);
    if (record.starts.has(step)) continue;
    // What is cleared away broke off before its end.
    if (record.last.step !== step && role !== "mold.clear") endLast(record, seconds);
    if (role === "mold.drop") record.begun = seconds;
    if (isContinuous && role === "mold.close") {
      record.begun = caught;
      record.delivered = seconds;
      caught = seconds;
    }
    record.starts.set(step, seconds);
    record.last = { step, role };
  }
  const stations = new Map(scenario.stations.map((each) => [each.name, each]));
  const atHeat = timesAtHeat([...shots.values()], stations, passageOf(scenario.stations));
  const hanging = new Map(scenario.stations.map((each) => [each.name, sagInput(scenario, each)]));
  return [...shots.values()].map((shot) => recordOf(shot, hanging.get(shot.station), atHeat.get(shot) ?? null));
}

function newShot(station: string, shot: number, last: Growing["last"]): Growing {
  return { station, shot, starts: new Map(), last, begun: undefined, delivered: undefined, closed: undefined };
}

/** A step ends as the next one of the same shot begins. */
function endLast(record: Growing, seconds: number): void {
  if (record.last.role === "mold.drop") record.delivered = seconds;
  if (record.last.role === "mold.close") record.closed = seconds;
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
    const [seconds, station] = [shot.delivered, stations.get(shot.station)];
    return seconds === undefined || station === undefined ? [] : [{ shot, seconds, mass: shotMass(station) }];
  });
  return new Map(
    left
      .toSorted((one, other) => one.seconds - other.seconds)
      .map(({ shot, seconds, mass }) => [shot, passage.deliver(seconds, mass)]),
  );
}

function recordOf(
  { station, shot, starts, begun, delivered, closed }: Growing,
  hanging: SagInput | undefined,
  timeAtHeat: number | null,
): ShotRecord {
  if (begun === undefined || delivered === undefined || closed === undefined)
    return { station, shot, starts, hang: null, sag: null, timeAtHeat };
  const hold = closed - delivered;
  const sag = hanging
    ? deliveredSag(hanging.melt, { length: hanging.length, delivery: delivered - begun, hold })
    : null;
  return { station, shot, starts, hang: hold, sag, timeAtHeat };
}
