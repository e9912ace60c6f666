// Every shot of one replication with the start of each of its steps, gathered from its events, and what its parison went through.
import { deliveredSag } from "#physics/parison/deliveredSag.ts";
import { stationCooling } from "#cell/layers/stationCooling.ts";
import type { ShotCooling } from "#physics/window/shotCooling.ts";
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
  /** °C of the thickest place when the mold begins to open; null where it did not, or the cooling is not known. */
  readonly demoldTemperature: number | null;
}

interface Growing extends Pick<ShotRecord, "station" | "shot"> {
  /** Place among all shots. */
  readonly place: number;
  readonly starts: Map<string, number>;
  /** The step that began last. */
  last: { readonly step: string; readonly role: StepRole | null };
  /** Seconds at which the parison was begun and delivered, and at which the mold had closed on it. */
  begun: number | undefined;
  delivered: number | undefined;
  closed: number | undefined;
  /** Seconds at heat when it was delivered. */
  atHeat: number | null;
  /** Seconds at which the blow began and ended, and at which the mold began to open. */
  readonly blown: { begun?: number; ended?: number; opened?: number };
}

/** All at once, in the order in which the valve shifted for them. */
export function shotRecords(events: Iterable<EventRecord>, scenario: Scenario): readonly ShotRecord[] {
  return [...eachShot(events, scenario)];
}

/**
 * The same one after the other, each as soon as nothing more happens to it and to those before it: in a long run few are held at
 * a time.
 */
export function* eachShot(events: Iterable<EventRecord>, scenario: Scenario): Generator<ShotRecord> {
  const growth = new Growth(scenario);
  for (const event of events) {
    if (growth.add(event)) yield* growth.finished();
  }
  yield* growth.rest();
}

/** One shot in the mold and one on the mask beside it: what the station begins after these does not concern an earlier one. */
const mostUnderWay = 3;

class Growth {
  readonly #isContinuous: boolean;
  readonly #stations: ReadonlyMap<string, StationSpec>;
  readonly #passage: MeltPassage | undefined;
  readonly #hanging: ReadonlyMap<string, SagInput | undefined>;
  readonly #cooling: ReadonlyMap<string, ShotCooling | undefined>;
  /** In their order, from the first that may still go on. */
  readonly #shots = new Map<string, Growing>();
  #count = 0;
  /** By station: the number of the shot begun last. */
  readonly #begun = new Map<string, number>();
  /** Delivered at one instant, and not yet in the order of the shots. */
  #delivered: Growing[] = [];
  /** In continuous extrusion a parison grows from the catch before to its own. */
  #caught: number | undefined;

  constructor(scenario: Scenario) {
    const { stations } = scenario;
    this.#isContinuous = scenario.delivery.kind === "continuous";
    this.#stations = new Map(stations.map((each) => [each.name, each]));
    this.#passage = passageOf(stations);
    this.#hanging = new Map(stations.map((each) => [each.name, sagInput(scenario, each)]));
    this.#cooling = new Map(stations.map((each) => [each.name, stationCooling(scenario, each)]));
  }

  /** Whether a shot has begun. */
  add({ owner, kind, step, role, station, shot, seconds }: EventRecord): boolean {
    const isOfMold = owner === "station" || owner === "mask";
    if (!isOfMold || station === null || shot === null || step === null || kind !== "working") return false;
    if (this.#delivered.length > 0 && seconds > this.#delivered[0]!.delivered!) this.#passOn();
    const begun = this.#count;
    const record = this.#shotOf(station, shot, { step, role });
    if (record.starts.has(step)) return false;
    // What is cleared away broke off before its end.
    if (record.last.step !== step && role !== "mold.clear") this.#endLast(record, seconds);
    if (role === "mold.drop") record.begun = seconds;
    if (this.#isContinuous && role === "mold.close") {
      record.begun = this.#caught;
      this.#deliver(record, seconds);
      this.#caught = seconds;
    }
    if (role === "mold.blow") record.blown.begun = seconds;
    if (role === "mold.open") record.blown.opened = seconds;
    record.starts.set(step, seconds);
    record.last = { step, role };
    return this.#count > begun;
  }

  *finished(): Generator<ShotRecord> {
    for (const [key, record] of this.#shots) {
      const isUnderWay = record.shot + mostUnderWay > this.#begun.get(record.station)!;
      if (isUnderWay || this.#delivered.includes(record)) return;
      this.#shots.delete(key);
      yield this.#recordOf(record);
    }
  }

  *rest(): Generator<ShotRecord> {
    this.#passOn();
    for (const record of this.#shots.values()) yield this.#recordOf(record);
  }

  #shotOf(station: string, shot: number, last: Growing["last"]): Growing {
    const key = `${shot} ${station}`;
    const known = this.#shots.get(key);
    if (known) return known;
    const record = newShot(station, shot, last, this.#count++);
    this.#shots.set(key, record);
    this.#begun.set(station, Math.max(shot, this.#begun.get(station) ?? 0));
    return record;
  }

  /** A step ends as the next one of the same shot begins. */
  #endLast(record: Growing, seconds: number): void {
    if (record.last.role === "mold.drop") this.#deliver(record, seconds);
    if (record.last.role === "mold.close") record.closed = seconds;
    if (record.last.role === "mold.blow") record.blown.ended = seconds;
  }

  #deliver(record: Growing, seconds: number): void {
    record.delivered = seconds;
    this.#delivered.push(record);
  }

  /** Of several at one instant in the order of the shots. */
  #passOn(): void {
    for (const shot of this.#delivered.toSorted((one, other) => one.place - other.place)) {
      const station = this.#stations.get(shot.station);
      if (station && this.#passage) shot.atHeat = this.#passage.deliver(shot.delivered!, shotMass(station));
    }
    this.#delivered = [];
  }

  #recordOf(shot: Growing): ShotRecord {
    return {
      ...recordOf(shot, this.#hanging.get(shot.station)),
      demoldTemperature: demoldTemperature(shot, this.#cooling.get(shot.station)),
    };
  }
}

function newShot(station: string, shot: number, last: Growing["last"], place: number): Growing {
  return {
    station,
    shot,
    place,
    starts: new Map(),
    last,
    begun: undefined,
    delivered: undefined,
    closed: undefined,
    atHeat: null,
    blown: {},
  };
}

function recordOf(
  { station, shot, starts, begun, delivered, closed, atHeat: timeAtHeat }: Growing,
  hanging: SagInput | undefined,
): Omit<ShotRecord, "demoldTemperature"> {
  if (begun === undefined || delivered === undefined || closed === undefined)
    return { station, shot, starts, hang: null, sag: null, timeAtHeat };
  const hold = closed - delivered;
  const sag = hanging
    ? deliveredSag(hanging.melt, { length: hanging.length, delivery: delivered - begun, hold })
    : null;
  return { station, shot, starts, hang: hold, sag, timeAtHeat };
}

function demoldTemperature({ blown }: Growing, cooling: ShotCooling | undefined): number | null {
  if (!cooling || blown.opened === undefined) return null;
  const { inflation, temperature } = cooling;
  const touched = inflation === null ? blown.ended : blown.begun === undefined ? undefined : blown.begun + inflation;
  return touched === undefined ? null : temperature(Math.max(0, blown.opened - touched));
}
