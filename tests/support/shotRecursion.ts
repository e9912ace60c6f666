/**
 * A second, independent account of the reciprocating-screw cell: one pass over its shots, with no event queue.
 *
 * Why one pass is enough. The screw can only be full while the valve is neutral, so shots follow one another and the n-th is
 * decided at max(full, earliest ready among the stations its rule admits). A machine's removal is fixed with its shot; only a
 * removal by operator stays open, as a request. Requests are granted in order of grant time up to the decision: a later shot
 * asks for an operator at or after its own decision, so it can never come before a grant already made.
 *
 * Choices where the contract is silent: at one instant grants come before the dispatch, which sees a removal that takes nothing;
 * `longest-waiting` counts from the start of a station's last drop, and a station without a drop has waited longest; a cell
 * that needs an operator and has none comes to rest.
 */

export interface RecursionCell {
  /** In order of ties and rotation. */
  readonly stations: readonly {
    readonly name: string;
    readonly priority: number;
    readonly removal: "machine" | "operator";
    /** From close to open with extra steps in order; removal comes after, extra steps after the drop come before close. */
    readonly moldSteps: readonly string[];
  }[];
  readonly dispatch: "first-ready" | "longest-waiting" | "alternate" | "priority";
  readonly rechargeStarts: "valve-neutral" | "mold-closed";
  readonly operators: number;
  readonly start: "running" | "cold";
}

/**
 * Whole ticks of the n-th (from 0) occurrence of a step. `station` is the index of the station served; for a recharge that is
 * the station just served, -1 for the first recharge of a cold start.
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

/** What the shots so far have fixed; Infinity in `ready` and `requested` means not known and none. */
interface Course {
  readonly cell: RecursionCell;
  readonly durations: Durations;
  readonly steps: StepInterval[];
  readonly counts: Map<string, number>;
  readonly ready: number[];
  readonly requested: number[];
  readonly lastDrop: number[];
  readonly operatorFree: number[];
}

/** More shots than this at one instant means that time stands still: every step of the circuit takes nothing. */
const mostShotsAtOnce = 10_000;

/** All steps that start before `until`, by start, then resource, then step. */
export function shotRecursion(cell: RecursionCell, durations: Durations, until: number): StepInterval[] {
  if (!Number.isFinite(until)) throw new RangeError("the recursion needs an end");
  const course = beginCourse(cell, durations);
  let full = cell.start === "cold" ? layStep(course, "plasticator", "recharge", -1, 0) : 0;
  let shotsAtOnce = 0;
  let before = 0;
  for (let shot = 0; ; shot += 1) {
    const admitted = cell.dispatch === "alternate" ? [shot % cell.stations.length] : [...cell.stations.keys()];
    const decision = settleDecision(course, admitted, full);
    if (decision >= until) break;
    shotsAtOnce = decision === before ? shotsAtOnce + 1 : 1;
    before = decision;
    if (shotsAtOnce > mostShotsAtOnce) throw new RangeError(`time stands still at ${decision}`);
    full = layShot(course, chooseStation(course, admitted, decision), decision);
  }
  return course.steps.filter((step) => step.start < until).toSorted(byStart);
}

function beginCourse(cell: RecursionCell, durations: Durations): Course {
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
  };
}

/** The instant of the next shift to a port, after every grant up to and at that instant has been made. */
function settleDecision(course: Course, admitted: readonly number[], full: number): number {
  for (;;) {
    const decision = Math.max(full, Math.min(...admitted.map((station) => at(course.ready, station))));
    const grant = Math.max(Math.min(...course.requested), Math.min(...course.operatorFree));
    if (grant === Infinity || grant > decision) return decision;
    grantRemoval(course, grant);
  }
}

/** Gives the operator who is free first to the oldest request; the scan keeps the first station among equals. */
function grantRemoval(course: Course, grant: number): void {
  const station = course.requested.indexOf(Math.min(...course.requested));
  const operator = course.operatorFree.indexOf(Math.min(...course.operatorFree));
  const end = layStep(course, nameOf(course, station), "remove", station, grant);
  course.requested[station] = Infinity;
  course.operatorFree[operator] = end;
  course.ready[station] = end;
}

function chooseStation(course: Course, admitted: readonly number[], decision: number): number {
  const ready = admitted.filter((station) => at(course.ready, station) <= decision);
  return ready.reduce((best, station) => (rankOf(course, station) < rankOf(course, best) ? station : best));
}

/** The smallest is served; the reduction above keeps the first station among equals. */
function rankOf(course: Course, station: number): number {
  const ranks = {
    "first-ready": at(course.ready, station),
    "longest-waiting": at(course.lastDrop, station),
    priority: at(course.cell.stations, station).priority,
    alternate: 0, // the rotation admits one station only
  };
  return ranks[course.cell.dispatch];
}

/** Lays one shot from the shift to the port to the removal, or to the request for it; returns when the screw is full again. */
function layShot(course: Course, station: number, decision: number): number {
  const name = nameOf(course, station);
  const drop = layStep(course, "valve", "shift to port", station, decision);
  const delivered = layStep(course, name, "drop", station, drop);
  const neutral = layStep(course, "valve", "shift to neutral", station, delivered);
  const mold = layMoldSteps(course, station, delivered);
  course.lastDrop[station] = drop;
  if (at(course.cell.stations, station).removal === "machine") {
    course.ready[station] = layStep(course, name, "remove", station, mold.open);
  } else {
    course.ready[station] = Infinity;
    course.requested[station] = mold.open;
  }
  const recharge = course.cell.rechargeStarts === "mold-closed" ? Math.max(neutral, mold.closed) : neutral;
  return layStep(course, "plasticator", "recharge", station, recharge);
}

function layMoldSteps(course: Course, station: number, delivered: number): { closed: number; open: number } {
  let closed = Number.NaN;
  let open = delivered;
  for (const step of at(course.cell.stations, station).moldSteps) {
    open = layStep(course, nameOf(course, station), step, station, open);
    if (step === "close") closed = open;
  }
  if (Number.isNaN(closed)) throw new RangeError(`${nameOf(course, station)} never closes`);
  return { closed, open };
}

/** Writes down the next occurrence of a step and returns its end. */
function layStep(course: Course, resource: string, step: string, station: number, start: number): number {
  const key = JSON.stringify([resource, step]);
  const occurrence = course.counts.get(key) ?? 0;
  const duration = course.durations(resource, step, occurrence, station);
  if (!Number.isInteger(duration) || duration < 0) throw new RangeError(`${key} takes ${duration} ticks`);
  const end = start + duration;
  course.counts.set(key, occurrence + 1);
  course.steps.push({ resource, step, station: nameOf(course, station), occurrence, start, end });
  return end;
}

/** The first recharge of a cold start follows no station: its name is empty. */
function nameOf(course: Course, station: number): string {
  return station < 0 ? "" : at(course.cell.stations, station).name;
}

function at<Item>(list: readonly Item[], index: number): Item {
  const item = list[index];
  if (item === undefined) throw new RangeError(`nothing at ${index}`);
  return item;
}

/** Steps without duration can share start, resource and step; then the occurrence decides. */
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
