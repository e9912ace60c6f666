/**
 * A second, independent account of the cell with an accumulator: one pass over its shots, with no event queue.
 *
 * Why one pass is enough. Removal is by machine and the rule is first-ready, so that a shot fixes the instant at which its mold
 * is ready again, and the earliest of these is the next to be served whatever happens meanwhile.
 *
 * Choices where the contract is silent, `per-station`:
 * - a head calls for melt when its drop begins: the valve shifts to it while it still delivers, the fill waits for the end of
 *   the drop. (Were the call at the end of the drop, the chamber's circuit would be v + r + d, not the contract's r + d.);
 * - calls are served in their order, ties by the order of stations; the valve that has shifted to a head stays for its fill,
 *   even when another head could be filled sooner;
 * - every fill is preceded by one shift, also when the valve is at that head already, as with one station (r + v at M = 1);
 * - between fills the valve stays where it is: it has no neutral to go back to; a drop does not wait until it has left;
 * - the n-th recharge is the n-th fill of any head, its time that of the head filled;
 * - `running`: every chamber full, so that all stations drop at 0; `cold`: every chamber empty, all have called at 0.
 *
 * Choices where the contract is silent, `common`:
 * - the n-th recharge replaces the n-th shot delivered, at the rate of the station just served; it may begin when that drop
 *   begins, recharges follow one another without a gap, and they are all done exactly when the chamber is full;
 * - where the screw is faster than the delivery, a full chamber holds its recharge back to the end of the drop;
 * - a shift to a port needs the largest shot in the chamber and begins at the first whole tick at which it is there;
 * - the chamber goes on filling while the valve shifts to the port; the recharge does not wait for the valve or the mold;
 * - `running`: the chamber is full to its capacity, not only to a shot; `cold`: it is empty, the first recharge (of no station) fills
 *   it to capacity at one rate, that of the largest shot in the time of occurrence 0, the rest rounded to a tick.
 *
 * Not here: operators, other rules of dispatch, stops, different times of the two shifts but by what `durations` returns.
 */
import type { Durations, StepInterval } from "./shotRecursion.ts";
import { earliestOf, StepLedger } from "./stepLedger.ts";

interface AccumulatorStation {
  readonly name: string;
  /** Whole milligrams; matters to a common chamber only. */
  readonly shot: number;
  /** All steps after the drop, in order, the removal included. */
  readonly moldSteps: readonly string[];
}

export type AccumulatorCell = {
  /** In order of ties. */
  readonly stations: readonly AccumulatorStation[];
  readonly start: "running" | "cold";
} & (
  | { readonly accumulator: "per-station" }
  /** Capacity in whole milligrams. */
  | { readonly accumulator: "common"; readonly capacity: number }
);

/** All steps that start before `until`; resources are `plasticator`, `valve` and the stations. */
export function accumulatorRecursion(cell: AccumulatorCell, durations: Durations, until: number): StepInterval[] {
  const names = cell.stations.map((station) => station.name);
  const ledger = new StepLedger(names, durations, until);
  if (cell.accumulator === "common") runCommonChamber(ledger, cell, cell.capacity);
  else runHeads(ledger, cell);
  return ledger.inOrder();
}

function layMoldSteps(ledger: StepLedger, cell: AccumulatorCell, station: number, delivered: number): number {
  const { name, moldSteps } = cell.stations[station]!;
  return moldSteps.reduce((start, step) => ledger.lay(name, step, station, start), delivered);
}

function runHeads(ledger: StepLedger, cell: AccumulatorCell): void {
  const moldReady = cell.stations.map(() => 0);
  const called = cell.stations.map(() => 0);
  const emptied = cell.stations.map(() => 0);
  const deliver = (station: number, full: number): void => {
    const drop = Math.max(full, moldReady[station]!);
    called[station] = drop;
    emptied[station] = ledger.lay(cell.stations[station]!.name, "drop", station, drop);
    moldReady[station] = layMoldSteps(ledger, cell, station, emptied[station]);
  };
  if (cell.start === "running") for (const station of cell.stations.keys()) deliver(station, 0);
  for (let valveFree = 0; ;) {
    const station = earliestOf(called);
    const shift = Math.max(valveFree, called[station]!);
    if (!ledger.includes(shift)) return;
    const open = ledger.lay("valve", "shift to port", station, shift);
    valveFree = ledger.lay("plasticator", "recharge", station, Math.max(open, emptied[station]!));
    deliver(station, valveFree);
  }
}

/** Melt that is or will be put into the common chamber at one rate. */
interface Charge {
  readonly mass: number;
  readonly start: number;
  readonly ticks: number;
}

/** The first whole tick from which on no more than `spare` is missing: the latest charges may still lie ahead. */
function chargedAt(charges: readonly Charge[], spare: number): number {
  let allowed = spare;
  for (const { mass, start, ticks } of charges.toReversed()) {
    if (allowed < mass) return start + Math.ceil(((mass - allowed) * ticks) / mass);
    allowed -= mass;
  }
  return 0;
}

function firstCharges(ledger: StepLedger, cell: AccumulatorCell, largest: number, spare: number): Charge[] {
  if (cell.start === "running") return [];
  const ticks = ledger.ticksOfNext("plasticator", "recharge", -1);
  const rest = Math.round((ticks * spare) / largest);
  ledger.note("plasticator", "recharge", -1, 0, ticks + rest);
  const shot = { mass: largest, start: 0, ticks };
  return spare === 0 ? [shot] : [shot, { mass: spare, start: ticks, ticks: rest }];
}

function runCommonChamber(ledger: StepLedger, cell: AccumulatorCell, capacity: number): void {
  const largest = Math.max(...cell.stations.map((station) => station.shot));
  const spare = capacity - largest;
  if (spare < 0) throw new RangeError(`a shot of ${largest} mg does not fit into ${capacity} mg`);
  const moldReady = cell.stations.map(() => 0);
  let charges = firstCharges(ledger, cell, largest, spare);
  let screwFree = charges.reduce((end, { ticks }) => end + ticks, 0);
  for (let neutral = 0; ;) {
    const station = earliestOf(moldReady);
    const { name, shot } = cell.stations[station]!;
    const shift = Math.max(neutral, moldReady[station]!, chargedAt(charges, spare));
    if (!ledger.includes(shift)) return;
    const drop = ledger.lay("valve", "shift to port", station, shift);
    const delivered = ledger.lay(name, "drop", station, drop);
    neutral = ledger.lay("valve", "shift to neutral", station, delivered);
    moldReady[station] = layMoldSteps(ledger, cell, station, delivered);
    const start = Math.max(screwFree, drop);
    const ticks = ledger.ticksOfNext("plasticator", "recharge", station);
    // What was done before this drop can never be missing again.
    charges = [...charges.filter((charge) => charge.start + charge.ticks > drop), { mass: shot, start, ticks }];
    screwFree = ledger.lay("plasticator", "recharge", station, start, delivered);
  }
}
