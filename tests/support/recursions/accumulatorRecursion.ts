// Independent computation of a cell with an accumulator: one pass over its shots, without an event queue.
import type { Durations, StepInterval } from "./shotRecursion.ts";
import { earliestOf, StepLedger } from "./stepLedger.ts";

/*
 * Why one pass is enough: removal is by machine and the dispatch rule is first-ready. A shot therefore fixes when its mold is
 * ready again, and the mold that is ready first is served next.
 *
 * Rules of `per-station`:
 * - A head requests melt when its drop begins. The valve shifts to it during the drop, the fill waits for the end of the drop.
 *   The circuit of a chamber is therefore r + d. (With a request at the end of the drop it would be v + r + d.)
 * - Requests are served in their order, ties in the order of the stations. After the shift to a head the valve stays for its
 *   fill, even when another head could be filled sooner.
 * - One shift comes before every fill, also when the valve is at that head already, as with one station (r + v at M = 1).
 * - Between fills the valve stays at its head; it has no neutral position. A drop does not wait for the valve to leave.
 * - The n-th recharge is the n-th fill of any head, and takes the time of the head that is filled.
 * - `running`: every chamber is full and all stations drop at 0. `cold`: every chamber is empty and all request melt at 0.
 *
 * Rules of `common`:
 * - The n-th recharge replaces the n-th shot delivered, at the rate of the station just served. It begins at the start of that
 *   drop or at the end of the previous recharge. The chamber is full when all recharges are done.
 * - When the screw is faster than the ram, the recharge ends with the drop.
 * - A shift to a port needs the largest shot in the chamber, and begins at the first whole tick at which the shot is there.
 * - The chamber fills on while the valve shifts to the port. The recharge does not wait for valve or mold.
 * - `running`: the chamber is full to its capacity. `cold`: it is empty. The first recharge belongs to no station and fills
 *   it to its capacity at one rate, the largest shot in the time of occurrence 0. The rest is rounded to a tick.
 *
 * Not included: operators, other dispatch rules, stops.
 */

interface AccumulatorStation {
  readonly name: string;
  /** Whole milligrams; used by a common chamber only. */
  readonly shot: number;
  /** All steps after the drop in order, the removal included. */
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

function scheduleMoldSteps(ledger: StepLedger, cell: AccumulatorCell, station: number, delivered: number): number {
  const { name, moldSteps } = cell.stations[station]!;
  return moldSteps.reduce((start, step) => ledger.schedule(name, step, station, start), delivered);
}

function runHeads(ledger: StepLedger, cell: AccumulatorCell): void {
  const moldReady = cell.stations.map(() => 0);
  const requested = cell.stations.map(() => 0);
  const emptied = cell.stations.map(() => 0);
  const deliver = (station: number, full: number): void => {
    const drop = Math.max(full, moldReady[station]!);
    requested[station] = drop;
    emptied[station] = ledger.schedule(cell.stations[station]!.name, "drop", station, drop);
    moldReady[station] = scheduleMoldSteps(ledger, cell, station, emptied[station]);
  };
  if (cell.start === "running") for (const station of cell.stations.keys()) deliver(station, 0);
  for (let valveFree = 0; ;) {
    const station = earliestOf(requested);
    const shift = Math.max(valveFree, requested[station]!);
    if (!ledger.includes(shift)) return;
    const open = ledger.schedule("valve", "shift to port", station, shift);
    valveFree = ledger.schedule("plasticator", "recharge", station, Math.max(open, emptied[station]!));
    deliver(station, valveFree);
  }
}

/** Melt that is or will be put into the common chamber at one rate. */
interface Charge {
  readonly mass: number;
  readonly start: number;
  readonly ticks: number;
}

/** The first whole tick at which at most `reserve` is missing; the latest charges may still be in the future. */
function chargedAt(charges: readonly Charge[], reserve: number): number {
  let allowed = reserve;
  for (const { mass, start, ticks } of charges.toReversed()) {
    if (allowed < mass) return start + Math.ceil(((mass - allowed) * ticks) / mass);
    allowed -= mass;
  }
  return 0;
}

function firstCharges(ledger: StepLedger, cell: AccumulatorCell, largest: number, reserve: number): Charge[] {
  if (cell.start === "running") return [];
  const ticks = ledger.ticksOfNext("plasticator", "recharge", -1);
  const rest = Math.round((ticks * reserve) / largest);
  ledger.record("plasticator", "recharge", -1, 0, ticks + rest);
  const shot = { mass: largest, start: 0, ticks };
  return reserve === 0 ? [shot] : [shot, { mass: reserve, start: ticks, ticks: rest }];
}

function runCommonChamber(ledger: StepLedger, cell: AccumulatorCell, capacity: number): void {
  const largest = Math.max(...cell.stations.map((station) => station.shot));
  const reserve = capacity - largest;
  if (reserve < 0) throw new RangeError(`a shot of ${largest} mg does not fit into ${capacity} mg`);
  const moldReady = cell.stations.map(() => 0);
  let charges = firstCharges(ledger, cell, largest, reserve);
  let screwFree = charges.reduce((end, { ticks }) => end + ticks, 0);
  for (let neutral = 0; ;) {
    const station = earliestOf(moldReady);
    const { name, shot } = cell.stations[station]!;
    const shift = Math.max(neutral, moldReady[station]!, chargedAt(charges, reserve));
    if (!ledger.includes(shift)) return;
    const drop = ledger.schedule("valve", "shift to port", station, shift);
    const delivered = ledger.schedule(name, "drop", station, drop);
    neutral = ledger.schedule("valve", "shift to neutral", station, delivered);
    moldReady[station] = scheduleMoldSteps(ledger, cell, station, delivered);
    const start = Math.max(screwFree, drop);
    const ticks = ledger.ticksOfNext("plasticator", "recharge", station);
    // Charges that ended before this drop are complete and no longer needed.
    charges = [...charges.filter((charge) => charge.start + charge.ticks > drop), { mass: shot, start, ticks }];
    screwFree = ledger.schedule("plasticator", "recharge", station, start, delivered);
  }
}
