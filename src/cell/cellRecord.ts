// What one replication of a cell leaves behind: plain rows, in ticks of a microsecond.
import type { Standstill } from "#engine/standstill.ts";

export interface StationRecord {
  readonly name: string;
  /** Shots delivered and parts removed within the observed time. */
  readonly shots: number;
  readonly parts: number;
  readonly shotMilligrams: number;
  /** Ticks of the first and the last delivery, -1 where there was none. */
  readonly firstShotTick: number;
  readonly lastShotTick: number;
  /** Tick of each delivery, ascending; empty where they were not kept. */
  readonly shotTicks: readonly number[];
}

export interface StateTime {
  readonly resource: string;
  readonly state: string;
  readonly kind: string;
  readonly ticks: number;
}

/** What one kind of stop of one resource did within the observed time. */
export interface StopRecord {
  readonly resource: string;
  /** Name of the stop, as the scenario calls it. */
  readonly stop: string;
  /** Stops that began within the observed time. */
  readonly count: number;
  /** Ticks of the observed time that the resource stood in it. */
  readonly stoppedTicks: number;
  /** What its clock ran in the observed time, repairs not counted: ticks, or cycles where it counts those. */
  readonly clocked: number;
  readonly clock: "calendar" | "working" | "cycles";
}

/** Ticks during which a resource's active period was the longest of all: alone, and while it handed over. */
export interface ActiveTime {
  readonly resource: string;
  readonly sole: number;
  readonly shifting: number;
}

/** Time that one step holds on the critical path. */
export interface ChainShare {
  readonly resource: string;
  readonly step: string;
  readonly process: string;
  /** On the chain back from each station's end of the run. */
  readonly ticksByStation: readonly number[];
  /** Mean of these, weighted by the stations' shots, and the part whose start was bound by more than one completion. */
  readonly ticks: number;
  readonly tiedTicks: number;
}

export interface CellRecord {
  readonly replication: number;
  /** The observed time: after `fromTick`, up to and including `untilTick`. */
  readonly fromTick: number;
  readonly untilTick: number;
  readonly stations: readonly StationRecord[];
  readonly stateTimes: readonly StateTime[];
  readonly longestActive: readonly ActiveTime[];
  readonly chain: readonly ChainShare[];
  /** Absent where the cell has no stops. */
  readonly stops?: readonly StopRecord[];
  /** Present where nothing could happen any more before the end. */
  readonly standstill?: Standstill;
}
