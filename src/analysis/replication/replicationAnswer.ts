// The answer of one replication: its measures and shares as plain rows, the same from any thread.
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import type { CellRecord, ChainShare, ElementTime, StateTime, StopExposure } from "#cell/records/cellRecord.ts";
import type { ParisonRecord } from "#cell/records/parisonRecord.ts";
import type { StepScale } from "#cell/layers/planCell.ts";
import type { DayRecord, QuarterRecord } from "#cell/records/quarterRecord.ts";
import { massBalance } from "./massBalance.ts";
import { measuresOf, type MeasureValue } from "./measures.ts";
import { stationCycles, type StationCycles } from "./stationCycles.ts";
import { wholeActive, wholeStates } from "#analysis/ideal/wholeServers.ts";

const secondsPerHour = 3600;
const milligramsPerKilogram = 1e6;

/** A run to make: the cell as it is, or with all draws of a step scaled. */
export interface ReplicationTask {
  /** Counted from 1; the same number always has the same random numbers. */
  readonly replication: number;
  readonly scale: StepScale | null;
  /** The number of a stop of the scenario that comes often in this run, to measure its effect. */
  readonly frequent?: number;
  /** Of a cell that only serves a comparison: no parisons, quarters and single cycles. */
  readonly brief?: true;
}

interface StateShare {
  readonly resource: string;
  readonly state: string;
  readonly kind: StateTime["kind"];
  readonly isActive: boolean;
  /** Of the observed time; those of a resource add up to 1. */
  readonly share: number;
}

export interface CriticalShare extends Pick<ChainShare, "role" | "task"> {
  readonly resource: string;
  readonly step: string;
  /** The resource that the step waited for, of those that it keeps busy; a server, not one of its places. */
  readonly owner: string;
  /** Of the observed time on shift; those of all steps add up to 1. */
  readonly share: number;
  /** The part of it whose start was bound by more than one completion. */
  readonly tied: number;
}

/** Shares of the observed time in which the resource's active period was the longest: alone, or while the next one overlapped. */
interface ActiveShare {
  readonly resource: string;
  readonly sole: number;
  readonly shifting: number;
}

/** The counts and times of one kind of stop of one resource in the observed time. */
export interface StopCount {
  readonly resource: string;
  readonly stop: string;
  /** Stops that began and stops that ended, with the seconds of each. */
  readonly count: number;
  readonly ended: number;
  readonly seconds: number;
  readonly endedSeconds: number;
  /** Repairs that began, and the seconds that they waited. */
  readonly repairs: number;
  readonly waitSeconds: number;
}

/** kg/h. */
export interface ResinFlow {
  /** All that left the screw, less the regrind used. */
  readonly bought: number;
  /** Melt that became no good part and does not return to the feed. */
  readonly surplus: number;
}

export interface ReplicationAnswer {
  readonly task: ReplicationTask;
  readonly measures: readonly MeasureValue[];
  /** Null where masses are not given. */
  readonly resin: ResinFlow | null;
  readonly stateShares: readonly StateShare[];
  /** Of the cell as a whole (null) and of each station, seconds. */
  readonly elementTimes: readonly (Omit<ElementTime, "ticks"> & { readonly seconds: number })[];
  readonly criticalShares: readonly CriticalShare[];
  readonly longestActive: readonly ActiveShare[];
  /** Absent where nothing stopped. */
  readonly stops?: readonly StopCount[];
  /** In the order of the scenario's stops; absent where it has none. */
  readonly exposures?: readonly StopExposure[];
  /** Each local day, and the first quarters of an hour of the replication that a report shows; absent without a calendar. */
  readonly days?: readonly DayRecord[];
  readonly quarters?: readonly QuarterRecord[];
  /** Of each station; empty where no material is given. */
  readonly parisons: readonly ParisonRecord[];
  /** All cycles of the replication that a report shows; empty for all other replications. */
  readonly cycles: readonly StationCycles[];
  /** The time of a deadlock or endless loop, and all waits at that time; null where the run reached its end. */
  readonly standstill: Standstill | null;
}

interface Standstill {
  readonly kind: string;
  readonly seconds: number;
  readonly waiting: readonly { readonly process: string; readonly step: string; readonly lacks: string }[];
}

/** Only of the first replication cycles and quarters of an hour are shown. */
export function isShown(task: ReplicationTask): boolean {
  return task.replication === 1 && isWhole(task);
}

/** Whether the replication leaves all that a study reads. */
export function isWhole({ scale, brief, frequent }: ReplicationTask): boolean {
  return scale === null && brief !== true && frequent === undefined;
}

export function answerOf(task: ReplicationTask, record: CellRecord): ReplicationAnswer {
  const observed = record.untilTick - record.fromTick;
  const { standstill, stops, stopExposures, takeaway } = record;
  return {
    task,
    measures: measuresOf(record),
    resin: resinFlow(record),
    stateShares: wholeStates(
      record.stateTimes.map(({ ticks, ...time }) => ({ ...time, share: ticks / observed })),
      takeaway?.servers,
    ),
    elementTimes: record.elementTimes.map(({ ticks, ...time }) => ({ ...time, seconds: ticks / TICKS_PER_SECOND })),
    criticalShares: criticalShares(record),
    longestActive: wholeActive(
      record.longestActive.map(({ resource, sole, shifting }) => ({
        resource,
        sole: sole / observed,
        shifting: shifting / observed,
      })),
      takeaway?.servers,
    ),
    ...(stops.length > 0 ? { stops: stopCounts(record) } : {}),
    ...(stopExposures.length > 0 ? { exposures: stopExposures } : {}),
    ...(record.days ? { days: record.days } : {}),
    ...(record.quarters && isShown(task) ? { quarters: record.quarters } : {}),
    parisons: record.parisons,
    cycles: isShown(task) ? stationCycles(record) : [],
    standstill: standstill
      ? { kind: standstill.kind, seconds: standstill.tick / TICKS_PER_SECOND, waiting: standstill.waiting }
      : null,
  };
}

function resinFlow(record: CellRecord): ResinFlow | null {
  const balance = massBalance(record);
  if (!balance) return null;
  const { virgin, regrindSurplus } = balance;
  const milligrams = milligramsPerKilogram * ((record.untilTick - record.fromTick) / TICKS_PER_SECOND / secondsPerHour);
  return { bought: virgin / milligrams, surplus: regrindSurplus / milligrams };
}

/**
 * A step that several processes share, such as the valve shift to a port, is one step of its resource for each owner. Time off
 * shift is excluded, and the shares of the rest add up to 1.
 */
function criticalShares(record: CellRecord): readonly CriticalShare[] {
  const shares = new Map<string, CriticalShare>();
  const working = record.chain.filter(({ role }) => role !== "calendar.off");
  const total = working.reduce((sum, { ticks }) => sum + ticks, 0);
  if (total === 0) return [];
  const servers = record.takeaway?.servers ?? [];
  for (const { resource, step, role, task, ticks, tiedTicks, ...link } of working) {
    const owner = servers.find(({ places }) => places.includes(link.owner))?.name ?? link.owner;
    const key = JSON.stringify([resource, step, owner]);
    const tag = { ...(role ? { role } : {}), ...(task ? { task } : {}) };
    const known = shares.get(key) ?? { resource, step, owner, ...tag, share: 0, tied: 0 };
    shares.set(key, { ...known, share: known.share + ticks / total, tied: known.tied + tiedTicks / total });
  }
  return [...shares.values()];
}

const noStop = { count: 0, ended: 0, seconds: 0, endedSeconds: 0, repairs: 0, waitSeconds: 0 };

/** Only kinds that occurred; a stop without an end lasts until the end of the run. */
function stopCounts({ stops, untilTick }: CellRecord): readonly StopCount[] {
  const counts = new Map<string, StopCount>();
  for (const { resource, stop, ...at } of stops) {
    const key = JSON.stringify([resource, stop]);
    const known = counts.get(key) ?? { resource, stop, ...noStop };
    const seconds = ((at.untilTick ?? untilTick) - at.fromTick) / TICKS_PER_SECOND;
    const isEnded = at.untilTick !== null;
    const waited = at.repairTick === null ? 0 : (at.repairTick - at.fromTick) / TICKS_PER_SECOND;
    counts.set(key, {
      ...known,
      count: known.count + 1,
      seconds: known.seconds + seconds,
      ended: known.ended + (isEnded ? 1 : 0),
      endedSeconds: known.endedSeconds + (isEnded ? seconds : 0),
      repairs: known.repairs + (at.repairTick === null ? 0 : 1),
      waitSeconds: known.waitSeconds + waited,
    });
  }
  return [...counts.values()];
}
