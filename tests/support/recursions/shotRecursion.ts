// Independent computation of the reciprocating-screw cell: one pass over its shots, without an event queue.

/*
 * Why one pass is enough: the screw is full only while the valve is neutral, so that shots follow one another. The n-th is decided
 * at max(full, earliest ready among the stations that the dispatch rule admits). A removal by machine is fixed with its shot; a
 * removal by operator is kept as a request. Requests are granted in the order of their grants up to the decision. A later shot
 * requests an operator at or after its own decision, so that it never precedes a grant already made.
 *
 * Rules: at one instant grants come before the dispatch, so that a removal of zero duration counts. `longest-since-drop` counts from
 * the start of a station's last drop; a station without a drop has waited longest. A cell that needs an operator and has none
 * stops. An operator who is granted walks first, unless the last task was at the same mold.
 */

export interface RecursionCell {
  /** In order of ties and rotation. */
  readonly stations: readonly {
    readonly name: string;
    readonly priority: number;
    readonly removal: "machine" | "operator";
    /** All steps between drop and removal in order, extra steps included. */
    readonly moldSteps: readonly string[];
  }[];
  readonly dispatch: "first-ready" | "longest-since-drop" | "alternate" | "priority";
  readonly rechargeStarts: "valve-neutral" | "mold-closed";
  readonly operators: number;
  /**
   * Ticks of a walk to a mold where the operator's last task was at another one or where there was none; 0 if not given. Which of
   * several operators walks is known only where no two become free at one instant.
   */
  readonly walk?: number;
  readonly start: "running" | "cold";
}

/**
 * Whole ticks of the n-th (from 0) occurrence of a step. `station` is the index of the station served: the station just served for
 * a recharge, -1 for the first recharge of a cold start.
 */
export type Durations = (resource: string, step: string, n: number, station: number) => number;

export interface StepInterval {
  readonly resource: string;
  readonly step: string;
  readonly station: string;
  readonly occurrence: number;
  readonly start: number;
  readonly end: number;
}

/** The state after the shots so far; Infinity in `ready` means unknown, in `requested` no request. */
interface Progress {
  readonly cell: RecursionCell;
  readonly durations: Durations;
  readonly steps: StepInterval[];
  readonly counts: Map<string, number>;
  readonly ready: number[];
  readonly requested: number[];
  readonly lastDrop: number[];
  readonly operatorFree: number[];
  /** Mold of the last task, -1 where there was none. */
  readonly operatorAt: number[];
  readonly waits: OperatorWait[];
}

/** A wait of a mold for an operator: first until one is granted, then until that operator has walked to it. */
export interface OperatorWait {
  readonly station: string;
  readonly requested: number;
  readonly granted: number;
  readonly arrived: number;
}

/** More shots than this at one instant mean that every step of the circuit has zero duration. */
const mostShotsAtOnce = 10_000;

/** All steps that start before `until`, by start, then resource, then step. */
export function shotRecursion(cell: RecursionCell, durations: Durations, until: number): StepInterval[] {
  const { steps } = runTo(cell, durations, until);
  return steps.filter((step) => step.start < until).toSorted(byStart);
}

/** All waits for an operator that begin before `until`. */
export function operatorWaits(cell: RecursionCell, durations: Durations, until: number): OperatorWait[] {
  const { waits, requested } = runTo(cell, durations, until);
  const pending = cell.stations.map(({ name }, k) => {
    return { station: name, requested: at(requested, k), granted: Infinity, arrived: Infinity };
  });
  return [...waits, ...pending].filter((wait) => wait.requested < until);
}

function runTo(cell: RecursionCell, durations: Durations, until: number): Progress {
  if (!Number.isFinite(until)) throw new RangeError("the recursion needs an end");
  const progress = beginProgress(cell, durations);
  let full = cell.start === "cold" ? scheduleStep(progress, "plasticator", "recharge", -1, 0) : 0;
  let shotsAtOnce = 0;
  let before = 0;
  for (let shot = 0; ; shot += 1) {
    const admitted = cell.dispatch === "alternate" ? [shot % cell.stations.length] : [...cell.stations.keys()];
    const decision = settleDecision(progress, admitted, full);
    if (decision >= until) break;
    shotsAtOnce = decision === before ? shotsAtOnce + 1 : 1;
    before = decision;
    if (shotsAtOnce > mostShotsAtOnce) throw new RangeError(`time does not advance at ${decision}`);
    full = scheduleShot(progress, chooseStation(progress, admitted, decision), decision);
  }
  return progress;
}

function beginProgress(cell: RecursionCell, durations: Durations): Progress {
  if (cell.stations.length === 0) throw new RangeError("the cell has no station");
  return {
    cell,
    durations,
    steps: [],
    counts: new Map(),
    ready: cell.stations.map(() => 0),
    requested: cell.stations.map(() => Infinity),
    lastDrop: cell.stations.map(() => -Infinity),
    operatorFree: Array.from({ length: cell.operators }, () => 0),
    operatorAt: Array.from({ length: cell.operators }, () => -1),
    waits: [],
  };
}

/** The instant of the next shift to a port, after all grants up to that instant. */
function settleDecision(progress: Progress, admitted: readonly number[], full: number): number {
  for (;;) {
    const decision = Math.max(full, Math.min(...admitted.map((station) => at(progress.ready, station))));
    const grant = Math.max(Math.min(...progress.requested), Math.min(...progress.operatorFree));
    if (grant === Infinity || grant > decision) return decision;
    grantRemoval(progress, grant);
  }
}

/** Assigns the operator who is free first to the oldest request; the scan keeps the first station among equals. */
function grantRemoval(progress: Progress, grant: number): void {
  const station = progress.requested.indexOf(Math.min(...progress.requested));
  const operator = progress.operatorFree.indexOf(Math.min(...progress.operatorFree));
  const walk = at(progress.operatorAt, operator) === station ? 0 : (progress.cell.walk ?? 0);
  const arrived = grant + walk;
  const name = nameOf(progress, station);
  progress.waits.push({ station: name, requested: at(progress.requested, station), granted: grant, arrived });
  const end = scheduleStep(progress, name, "remove", station, arrived);
  progress.requested[station] = Infinity;
  progress.operatorAt[operator] = station;
  progress.operatorFree[operator] = end;
  progress.ready[station] = end;
}

function chooseStation(progress: Progress, admitted: readonly number[], decision: number): number {
  const ready = admitted.filter((station) => at(progress.ready, station) <= decision);
  return ready.reduce((best, station) => (rankOf(progress, station) < rankOf(progress, best) ? station : best));
}

/** The station of the smallest rank is served; `chooseStation` keeps the first station among equals. */
function rankOf(progress: Progress, station: number): number {
  const ranks = {
    "first-ready": at(progress.ready, station),
    "longest-since-drop": at(progress.lastDrop, station),
    priority: at(progress.cell.stations, station).priority,
    alternate: 0, // the rotation admits one station only
  };
  return ranks[progress.cell.dispatch];
}

/** Schedules one shot up to the removal or the request for it; returns the tick at which the screw is full again. */
function scheduleShot(progress: Progress, station: number, decision: number): number {
  const name = nameOf(progress, station);
  const drop = scheduleStep(progress, "valve", "shift to port", station, decision);
  const delivered = scheduleStep(progress, name, "drop", station, drop);
  const neutral = scheduleStep(progress, "valve", "shift to neutral", station, delivered);
  const mold = scheduleMoldSteps(progress, station, delivered);
  progress.lastDrop[station] = drop;
  if (at(progress.cell.stations, station).removal === "machine") {
    progress.ready[station] = scheduleStep(progress, name, "remove", station, mold.open);
  } else {
    progress.ready[station] = Infinity;
    progress.requested[station] = mold.open;
  }
  const recharge = progress.cell.rechargeStarts === "mold-closed" ? Math.max(neutral, mold.closed) : neutral;
  return scheduleStep(progress, "plasticator", "recharge", station, recharge);
}

function scheduleMoldSteps(progress: Progress, station: number, delivered: number): { closed: number; open: number } {
  let closed = Number.NaN;
  let open = delivered;
  for (const step of at(progress.cell.stations, station).moldSteps) {
    open = scheduleStep(progress, nameOf(progress, station), step, station, open);
    if (step === "close") closed = open;
  }
  if (Number.isNaN(closed)) throw new RangeError(`${nameOf(progress, station)} never closes`);
  return { closed, open };
}

/** Records the next occurrence of a step and returns its end. */
function scheduleStep(progress: Progress, resource: string, step: string, station: number, start: number): number {
  const key = JSON.stringify([resource, step]);
  const occurrence = progress.counts.get(key) ?? 0;
  const duration = progress.durations(resource, step, occurrence, station);
  if (!Number.isInteger(duration) || duration < 0) throw new RangeError(`${key} takes ${duration} ticks`);
  const end = start + duration;
  progress.counts.set(key, occurrence + 1);
  progress.steps.push({ resource, step, station: nameOf(progress, station), occurrence, start, end });
  return end;
}

/** The first recharge of a cold start belongs to no station: its name is empty. */
function nameOf(progress: Progress, station: number): string {
  return station < 0 ? "" : at(progress.cell.stations, station).name;
}

function at<Item>(list: readonly Item[], index: number): Item {
  const item = list[index];
  if (item === undefined) throw new RangeError(`nothing at ${index}`);
  return item;
}

/** Steps of zero duration may share start, resource and step; then the occurrence decides. */
function byStart(one: StepInterval, other: StepInterval): number {
  return (
    one.start - other.start ||
    compareText(one.resource, other.resource) ||
    compareText(one.step, other.step) ||
    one.occurrence - other.occurrence
  );
}

function compareText(one: string, other: string): number {
  if (one === other) return 0;
  return one < other ? -1 : 1;
}
