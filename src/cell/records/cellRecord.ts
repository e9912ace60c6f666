// What one replication of a cell leaves behind: plain rows, in ticks of a microsecond.
import type { StateKind } from "#cell/words/stateNames.ts";
import type { Standstill } from "#engine/run/standstill.ts";
import type { ShotMasses } from "#cell/table/shotMass.ts";
import type { CellStep } from "#cell/words/cellTable.ts";
import type { CountedElement } from "#cell/words/elementWords.ts";
import type { ParisonRecord } from "./parisonRecord.ts";
import type { CountedTimes } from "./countedTimes.ts";
import type { DayRecord, QuarterRecord } from "./quarterRecord.ts";

export interface StationRecord {
  readonly name: string;
  /** Shots delivered and parts removed within the observed time. */
  readonly shots: number;
  readonly parts: number;
  /** Milligrams; absent where no mass is given. */
  readonly masses?: ShotMasses;
  /** Shots whose drop a stop broke off, not among `shots`; and shots lost at the mold, those included. */
  readonly lostDrops: number;
  readonly lostShots: number;
  /** Parts refused at the mold, for each reason that there may be. */
  readonly rejects: readonly { readonly reason: string; readonly parts: number }[];
  /** Ticks of the first and the last delivery, -1 where there was none. */
  readonly firstShotTick: number;
  readonly lastShotTick: number;
  /** Tick of each delivery, ascending; empty where they were not kept. */
  readonly shotTicks: readonly number[];
  /** Times from one delivery to the next; absent where they were not counted. */
  readonly cycles?: CountedTimes;
}

export interface StateTime {
  readonly resource: string;
  readonly state: string;
  readonly kind: StateKind;
  /** Its resource counts as active. */
  readonly isActive: boolean;
  readonly ticks: number;
}

/** Time of the cell as a whole, or of one station, in one time element; those of all elements are the observed time. */
export interface ElementTime {
  /** Null: the cell. */
  readonly station: string | null;
  readonly element: CountedElement;
  readonly ticks: number;
}

/** Ticks during which a resource's active period was the longest of all: alone, and while it handed over. */
interface ActiveTime {
  readonly resource: string;
  readonly sole: number;
  readonly shifting: number;
}

/** Time that one step holds on the critical path; a wait that was given up has no role. */
export interface ChainShare extends Partial<Pick<CellStep, "role" | "task">> {
  readonly resource: string;
  readonly step: string;
  readonly process: string;
  /** The resource to which the time belongs: the one that the step waited for, of those that it keeps busy. */
  readonly owner: string;
  /** On the chain back from each station's end of the run. */
  readonly ticksByStation: readonly number[];
  /** Mean of these, weighted by the stations' shots, and the part whose start was bound by more than one completion. */
  readonly ticks: number;
  readonly tiedTicks: number;
}

/** One stop: when it began, when its repair began and when it ended; null where the observation ended first. */
export interface StopRecord {
  readonly resource: string;
  readonly stop: string;
  readonly fromTick: number;
  readonly repairTick: number | null;
  readonly untilTick: number | null;
}

/** How long one kind of stop was repaired, and how far its clock came, in the observed time. */
export interface StopExposure {
  /** Repairs under way at either end count with the part inside. */
  readonly repairSeconds: number;
  /** Seconds of working time or calendar time, or cycles; null where the cycles are not known. */
  readonly clock: number | null;
}

export interface CellRecord {
  readonly replication: number;
  /** The observed time: after `fromTick`, up to and including `untilTick`. */
  readonly fromTick: number;
  readonly untilTick: number;
  /** The planned times off within the observed time; absent without a calendar. */
  readonly off?: readonly { readonly fromTick: number; readonly untilTick: number }[];
  readonly stations: readonly StationRecord[];
  readonly stateTimes: readonly StateTime[];
  readonly elementTimes: readonly ElementTime[];
  readonly longestActive: readonly ActiveTime[];
  readonly chain: readonly ChainShare[];
  /** In the order in which they began; one that began before the observation is left out. */
  readonly stops: readonly StopRecord[];
  /** In the order of the scenario's stops. */
  readonly stopExposures: readonly StopExposure[];
  /** Largest share of regrind in the feed; absent where none goes back. */
  readonly regrindLimit?: number;
  /** What the servers after the molds made of the parts; absent where there are none. */
  readonly takeaway?: {
    /** Parts that passed the last one. */
    readonly good: number;
    readonly refused: readonly { readonly reason: string; readonly parts: number }[];
    /** Each place of a server is a resource of its own. */
    readonly servers: readonly { readonly name: string; readonly places: readonly string[] }[];
  };
  /** Melt between a full parison and its mold's close, milligrams; absent where the screw can stop. */
  readonly excessMilligrams?: number;
  /** Of each station; empty where no material is named, or parisons are not watched. */
  readonly parisons: readonly ParisonRecord[];
  /** Melt purged at starts and changes, milligrams. */
  readonly purgedMilligrams: number;
  /** Each local day of the observed time, and the quarters of an hour of the first ones; absent where the cell knows no calendar. */
  readonly days?: readonly DayRecord[];
  readonly quarters?: readonly QuarterRecord[];
  /** Present where nothing could happen any more before the end. */
  readonly standstill?: Standstill;
}
