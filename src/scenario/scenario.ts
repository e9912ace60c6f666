// The glossary of a scenario once it has been read: every default filled in, every quantity in SI, nothing left to interpret.
import type { Distribution } from "#engine/distributions/distribution.ts";
import type { Weekday } from "#foundation/civilDate.ts";
import type { Material } from "#physics/materials/material.ts";
import type { CoolingCriterion, DeliveryKind } from "#physics/window/windowInput.ts";
import type { QuantityKey, StationKey } from "#physics/window/windowKeys.ts";
import type { Path } from "#scenario/values/finding.ts";

/**
 * A time that was measured, or a mass rate from which the time follows as mass / rate.
 * `time` in seconds, `rate` in kg/s.
 */
export type TimeOrRate =
  { readonly by: "time"; readonly time: Distribution } | { readonly by: "rate"; readonly rate: Distribution };

/** Which of the stations that wait for a shot gets the next one. */
export type DispatchRule = "first-ready" | "longest-since-drop" | "alternate" | "priority";

export interface ProcessSpec {
  readonly material: Material;
  /** Numbers of the process window, as far as the file gives them. */
  readonly values: Readonly<Partial<Record<QuantityKey | StationKey, number>>>;
  readonly deliveryKind: DeliveryKind;
  /** The hottest point where absent. */
  readonly coolingTo?: CoolingCriterion;
}

/** The steps of a station's cycle that always exist, in their order. */
export type CycleStep = "drop" | "close" | "blow" | "cool" | "vent" | "open" | "remove";

/** The steps whose time may be `estimate`. */
export type EstimatedStep = "blow" | "cool" | "vent";

export interface EstimatesSpec {
  readonly steps: readonly EstimatedStep[];
  /** The place in the text of the station with the estimates. */
  readonly path: Path;
}

/** A step that the user named, placed after `after` (a cycle step or an extra step listed before it). */
export interface ExtraStepSpec {
  readonly name: string;
  readonly after: string;
  /** Seconds. */
  readonly time: Distribution;
}

export interface StationSpec {
  readonly name: string;
  readonly cavities: number;
  /** Name of the product that its mold makes. */
  readonly product: string;
  /** Mass of one finished part, kg; absent where none is given: then all times are measured. */
  readonly partMass?: number;
  /** Flash that leaves the mold with one part, kg; absent where `partMass` is. */
  readonly flashMass?: number;
  /** How long the ram takes to deliver this station's shot: measured, or shot mass / delivery rate; nothing where none drops. */
  readonly drop: TimeOrRate;
  /** How long the screw takes to make this station's shot: measured, or shot mass / plasticating rate. */
  readonly recharge: TimeOrRate;
  /** Seconds. */
  readonly close: Distribution;
  readonly blow: Distribution;
  readonly cool: Distribution;
  readonly vent: Distribution;
  readonly open: Distribution;
  readonly remove: { readonly time: Distribution; readonly by: "machine" | "operator" };
  /** Seconds; only for continuous extrusion. */
  readonly travel?: { readonly in: Distribution; readonly cut: Distribution; readonly out: Distribution };
  /** How a lost shot is cleared from the mold; absent where none can be lost. */
  readonly clear?: { readonly time: Distribution; readonly by: "machine" | "operator" };
  readonly extra: readonly ExtraStepSpec[];
  /** Steps whose time is not yet computed and is 0 until then; absent where there are none. */
  readonly estimates?: EstimatesSpec;
  /** Steps whose time was computed. */
  readonly estimated?: readonly EstimatedStep[];
  /** Absent where no material is named: then there is no process window. */
  readonly process?: ProcessSpec;
  /** Rank under `dispatch: priority`: 1 is served first. Equal numbers are ties. */
  readonly priority: number;
}

/** Melt collects in a chamber before it is delivered, so that the screw goes on while a parison drops. */
export interface AccumulatorHeadSpec {
  readonly kind: "accumulator-head";
  /** A chamber of one shot in the head of every station, or one before the valve for all. */
  readonly accumulator: "per-station" | "common";
  /** Melt that the chamber can hold, kg; always given for a common one. */
  readonly shotCapacity?: number;
}

/** Continuous extrusion: the parison grows all the time, and molds travel under the die. */
export interface ContinuousSpec {
  readonly kind: "continuous";
  /** `matched`: the screw is turned down to the pace of the molds, within its range; `fixed`: the surplus is excess melt. */
  readonly rate: "matched" | "fixed";
  /** The slowest that a matched screw may turn, kg/s; absent where there is no such limit. */
  readonly slowestRate?: number;
  /** Seconds a shot at which a matched screw keeps step with the molds; absent until that is known: it then turns at full rate. */
  readonly moldPace?: number;
  /** Seconds for which all stations are stopped before the screw stops; absent where it does not stop. */
  readonly stopsScrewAfter?: number;
  /** `pin`: parts are removed outside the mold's cycle, by one mask a station. */
  readonly removal: "mold" | "pin";
  /** `shared`: a mold may travel in while the one before travels out; `exclusive`: only after that. */
  readonly dieZone: "shared" | "exclusive";
}

export type DeliverySpec = ReciprocatingScrewSpec | AccumulatorHeadSpec | ContinuousSpec;

export interface ReciprocatingScrewSpec {
  readonly kind: "reciprocating-screw";
  /** Largest shot that the screw can hold in front of it, kg; absent when measured times were given without it. */
  readonly shotCapacity?: number;
  readonly rechargeStarts: "valve-neutral" | "mold-closed";
  /** `served`: a recharge replaces the shot just delivered; `next` (alternate only): it is charged for the next station. */
  readonly shotFor: "served" | "next";
}

export interface ValveSpec {
  /** One shift, between neutral and a port, or from head to head, seconds. */
  readonly shift: Distribution;
  readonly dispatch: DispatchRule;
}

/** Cost rates in `currency` and SI; absent where not given. */
export interface CostSpec {
  /** Label beside every amount. */
  readonly currency: string;
  /** Cost of 1 kg of virgin resin, and credit for 1 kg of surplus regrind. */
  readonly resin?: number;
  readonly regrindCredit?: number;
  /** Per J at the drive. */
  readonly energy?: number;
  /** Per s of planned time: heaters of barrel and head, one operator, the cell, each station. */
  readonly heating?: number;
  readonly operator?: number;
  readonly machine?: number;
  readonly station?: number;
  /** Per m³ of free air that is compressed. */
  readonly air?: number;
  /** Per kg of melt that the molds cool. */
  readonly cooling?: number;
  /** Per part made, good or not; per good part. */
  readonly tooling?: number;
  readonly packing?: number;
  /** What a good part sells for. */
  readonly price?: number;
  /** What the layout costs to buy, in `currency`; read by a comparison alone. */
  readonly investment?: number;
}

/** A layout to choose from, as a change of the file. */
export interface OptionSpec {
  readonly name: string;
  /** Options of one group exclude each other; absent: it is never combined. */
  readonly group?: string;
  /** `path=value` of each setting. */
  readonly settings: readonly string[];
  /** In the currency; per s of planned time; m². */
  readonly investment?: number;
  readonly perHour?: number;
  readonly floorSpace?: number;
}

/** A recurring stop of one resource. */
export interface StopSpec {
  readonly name: string;
  /** `plasticator`, `valve` or a station's name. */
  readonly resource: string;
  /** Seconds from the end of one stop to the next, all the time or only while the resource works; or so many cycles of it. */
  readonly comes:
    | { readonly by: "calendar" | "working"; readonly between: Distribution }
    | { readonly by: "cycles"; readonly cycles: number };
  /** `running`: the interval under way at time 0 began before; `fresh`: it begins then. */
  readonly start: "running" | "fresh";
  /** Seconds. */
  readonly repair: Distribution;
  readonly by: "itself" | "operator";
  /** `in`: the repair waits for a work shift, and a repair without an operator pauses between shifts; no effect without a calendar. */
  readonly shift: "in" | "any";
  /** The rule for the step under way. */
  readonly step: "finish" | "hold" | "scrap";
}

/** One of the servers that parts pass after the mold. */
export interface ServerSpec {
  readonly name: string;
  /** Seconds for one part. */
  readonly time: Distribution;
  /** Parts worked on at once, and parts that may wait before it. */
  readonly places: number;
  readonly buffer: number;
  /** Share of parts that it refuses. */
  readonly rejects: number;
  readonly by: "machine" | "operator";
  /** Why it refuses parts, as tables say it; its name where absent. */
  readonly reason?: string;
  /** Every station has one of its own. */
  readonly perStation?: true;
  /** Seconds since a part left the mold: a younger one waits, an older one is a reject. */
  readonly minAge?: number;
  readonly maxAge?: number;
}

/** What operators are called for. */
export type CrewTask = "removal" | "clearing" | "repair" | "packing";

/** Seconds from the beginning of the run. */
export interface AbsenceSpec {
  readonly from: number;
  readonly until: number;
  readonly why: "off shift" | "on break";
}

export interface CalendarSpec {
  /** Local date and wall time at which the run begins. */
  readonly begins: string;
  /** When the cell is off shift, and when it pauses with its operators; in order, without overlap. */
  readonly off: readonly AbsenceSpec[];
  /** When each operator is away. */
  readonly operators: readonly (readonly AbsenceSpec[])[];
  /** The shifts and clock changes as written. */
  readonly shifts: readonly ShiftSpec[];
  readonly clockChanges: readonly ClockChangeSpec[];
  /** Whether the cell runs on while its operators are on break. */
  readonly breaks: "run on" | "stop";
}

/** Times of day as they were written. */
export interface ShiftSpec {
  readonly name?: string;
  /** Days on which it starts; all where absent. */
  readonly days?: readonly Weekday[];
  readonly start: string;
  readonly end: string;
  /** All operators where absent. */
  readonly operators?: number;
  /** Each with its length in seconds. */
  readonly breaks: readonly { readonly at: string; readonly time: number }[];
  /** When it is in the run, and when its people are on break; seconds. */
  readonly stretches: readonly { readonly from: number; readonly until: number }[];
  readonly pauses: readonly { readonly from: number; readonly until: number }[];
}

export interface ClockChangeSpec {
  readonly on: string;
  readonly at: string;
  /** Seconds by which the clocks are put on; below 0: put back. */
  readonly by: number;
}

export interface StartUpSpec {
  /** Seconds at rest after which a start-up is due. */
  readonly afterOff: number;
  /** Seconds from the beginning of the shift. */
  readonly heatUp: number;
  /** Melt purged after that, kg. */
  readonly purge: number;
  /** Cycles of each station whose parts are rejects. */
  readonly scrap: number;
}

export interface ChangeSpec {
  readonly name: string;
  readonly kind: "mold" | "material" | "color";
  /** Of a mold change. */
  readonly station?: string;
  /** Seconds from the beginning of the run. */
  readonly at: number;
  readonly time: Distribution;
  /** The purge runs until the share of old material is below this; melt in the screw and in each manifold, kg. */
  readonly purge?: { readonly residue: number; readonly screw: number; readonly manifold: number };
}

/** A change of the whole cell before an order of another product. */
export interface ChangeoverSpec extends Omit<ChangeSpec, "at" | "station"> {
  /** The product that is made after it. */
  readonly to: string;
}

/** What makes a part good. */
export interface QualitySpec {
  /** Limits of the mass of a good part, kg. */
  readonly lightest?: number;
  readonly heaviest?: number;
  /** Relative standard deviations of mass: from shot to shot, alike in all cavities, and between the cavities of a shot. */
  readonly shotSpread: number;
  readonly cavitySpread: number;
  /** Share of parts that are rejects whatever their mass. */
  readonly rejects: number;
  /** °C: the hottest that the thickest place of a good part may be when the mold opens. */
  readonly maxDemold?: number;
}

/** Of the whole cell, on shift. */
export interface MeasuredSpec {
  /** Per second. */
  readonly shots?: number;
  readonly parts?: number;
  /** Seconds from shot to shot of a station, mean of all stations. */
  readonly cycle?: number;
}

export interface RunSpec {
  /** Simulated time of one replication in seconds, with the warm-up. */
  readonly length: number;
  readonly replications: number;
  readonly seed: string;
  /** Seconds from the start that are not counted; `auto`: to be found from the run itself. */
  readonly warmup: number | "auto";
  /** Replications are added until the 95 % half width of good parts per hour is at most this share of the mean. */
  readonly precision?: number;
  /** `running`: shot full, molds open and empty; `cold`: the screw must recharge first. */
  readonly start: "running" | "cold";
}

/** Good parts to make, after those of the orders before it. */
export interface OrderSpec {
  readonly product: string;
  readonly quantity: number;
  /** Seconds from the beginning of the run; absent where no date is given. */
  readonly due?: number;
}

/** Where a scenario comes from. */
export interface ScenarioCall {
  /** The file's name without folder. */
  readonly file: string;
  /** SHA-256 of the file's text. */
  readonly sha256: string;
  /** `path=value` of each setting that changed the file, in order. */
  readonly settings: readonly string[];
  /** The same of options such as --seed, which change the run and not the cell. */
  readonly options: readonly string[];
}

export interface Scenario {
  /** The file's name without folder and ending, or the name that the call gives. */
  readonly name: string;
  /** Absent where it was not read by a call of the program. */
  readonly call?: ScenarioCall;
  readonly title: string;
  readonly delivery: DeliverySpec;
  readonly valve: ValveSpec;
  /**
   * In the order of ties and of the rotation: `order:` if given, else names in code-point order; never the file's order.
   */
  readonly stations: readonly StationSpec[];
  /** Absent where nothing ever stops. */
  readonly stops?: readonly StopSpec[];
  /** Absent where every part is good. */
  readonly quality?: QualitySpec;
  /** Seconds from the closed mold to the open one beyond which the parts are rejects. */
  readonly maxInMold?: number;
  /** Seconds that a hanging parison may wait for the end of a stop. */
  readonly maxHang?: number;
  /** Absent where the cell is always on shift. */
  readonly calendar?: CalendarSpec;
  readonly startUp?: StartUpSpec;
  readonly changes?: readonly ChangeSpec[];
  /** Read where several orders are made one after the other. */
  readonly changeovers?: readonly ChangeoverSpec[];
  /** In the order in which parts pass them; absent where every part that leaves the mold is done. */
  readonly takeaway?: readonly ServerSpec[];
  /** Largest share of regrind in the feed; absent where no regrind is used. */
  readonly regrindLimit?: number;
  /** Seconds of an operator's way from one place of work to another; absent where it is not counted apart. */
  readonly walk?: Distribution;
  /** Which of the tasks that wait for an operator comes first; absent: the first call. */
  readonly taskOrder?: readonly CrewTask[];
  /** Operators who remove parts; 0 when every removal is by machine. */
  readonly operators: number;
  readonly costs?: CostSpec;
  /** What was measured at the real cell; absent where nothing was. */
  readonly measured?: MeasuredSpec;
  /** What is to be made, one after the other; absent where nothing is ordered. */
  readonly orders?: readonly OrderSpec[];
  /** Layouts that can be chosen in place of this one; absent where there are none. */
  readonly options?: readonly OptionSpec[];
  readonly run: RunSpec;
}
