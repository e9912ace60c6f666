// Independent computation of a cell with continuous extrusion: one pass over its parisons, without an event queue.
import type { Durations, StepInterval } from "./shotRecursion.ts";
import { earliestOf, StepLedger } from "./stepLedger.ts";

/*
 * Why one pass is enough: removal is by machine and the dispatch rule is first-ready. A parison therefore fixes when its mold is
 * clear again, and the mold that has been clear longest travels in next.
 *
 * Rules:
 * - The next parison grows from the instant `fullAt` of the previous one, so that the period is P when melt binds. `fullAt` is
 *   the end of the cut, its start, or the start of the close. At equal fixed times all three give the same period.
 * - A mold waits under the die before its close. The wait ends so that the parison is full at `fullAt`, given the times of its
 *   close and cut. A parison is therefore never short.
 * - Die zone `exclusive`: the next mold begins to travel in when the mold before has traveled out.
 * - Die zone `shared`: the next mold may begin to travel in when the mold before begins to travel out. It closes when that one has
 *   traveled out.
 * - The next mold is chosen when it may travel in and a mold is clear: first the earliest clear, then the order of stations.
 * - A parison takes the time of the station that catches it. The n-th draw belongs to the n-th parison; the one that hangs at a
 *   running start is not counted.
 * - Excess is a step of the plasticator, from the instant at which the parison was full to `fullAt`.
 * - `running`: a full parison hangs at 0, and its growth until it is caught is excess. `cold`: growth begins at 0. Both: molds clear.
 *
 * Not included: operators, other dispatch rules, removal by pin, stops of the screw.
 */

export interface ContinuousCell {
  /** In order of ties. */
  readonly stations: readonly {
    readonly name: string;
    /** All steps in order: `travel in`, `close`, `cut`, `travel out` and the rest up to a clear mold; extra steps may come between. */
    readonly steps: readonly string[];
  }[];
  readonly fullAt: "start of close" | "start of cut" | "end of cut";
  readonly start: "running" | "cold";
  readonly dieZone: "exclusive" | "shared";
}

/** A station's steps, divided at the waits, at `fullAt` and before and after the travel out. */
interface Parts {
  readonly toDie: readonly string[];
  readonly untilFull: readonly string[];
  readonly toTravelOut: readonly string[];
  readonly travelOut: readonly string[];
  readonly mold: readonly string[];
}

/** All steps that start before `until`; resources are `plasticator` (steps `parison` and `excess`) and the stations. */
export function continuousRecursion(cell: ContinuousCell, durations: Durations, until: number): StepInterval[] {
  const names = cell.stations.map((station) => station.name);
  const parts = cell.stations.map(({ steps }) => partsOf(steps, cell.fullAt));
  const ledger = new StepLedger(names, durations, until);
  const clear = names.map(() => 0);
  let caught = 0;
  let dieFree = 0;
  let mayTravelIn = 0;
  for (let parison = 0; ledger.includes(caught); parison += 1) {
    const station = earliestOf(clear);
    const { toDie, untilFull, toTravelOut, travelOut, mold } = parts[station]!;
    const schedule = (steps: readonly string[], from: number): number =>
      steps.reduce((start, step) => ledger.schedule(names[station]!, step, station, start), from);
    const hangs = parison === 0 && cell.start === "running";
    const full = hangs ? 0 : ledger.schedule("plasticator", "parison", station, caught);
    const underDie = Math.max(dieFree, schedule(toDie, Math.max(mayTravelIn, clear[station]!)));
    const ahead = untilFull.reduce((sum, step) => sum + ledger.ticksOfNext(names[station]!, step, station), 0);
    caught = schedule(untilFull, Math.max(underDie, full - ahead));
    if (caught > full) ledger.record("plasticator", "excess", station, full, caught);
    const leaves = schedule(toTravelOut, caught);
    dieFree = schedule(travelOut, leaves);
    mayTravelIn = cell.dieZone === "shared" ? leaves : dieFree;
    clear[station] = schedule(mold, dieFree);
  }
  return ledger.inOrder();
}

function partsOf(steps: readonly string[], fullAt: ContinuousCell["fullAt"]): Parts {
  const [travelIn, close, cut, travelOut] = ["travel in", "close", "cut", "travel out"].map((step) =>
    steps.indexOf(step),
  ) as [number, number, number, number];
  if (travelIn !== 0 || close < travelIn || cut < close || travelOut < cut) {
    throw new RangeError(`${steps.join(", ")}: not the steps of a continuous station`);
  }
  const full = { "start of close": close, "start of cut": cut, "end of cut": cut + 1 }[fullAt];
  return {
    toDie: steps.slice(0, close),
    untilFull: steps.slice(close, full),
    toTravelOut: steps.slice(full, travelOut),
    travelOut: steps.slice(travelOut, travelOut + 1),
    mold: steps.slice(travelOut + 1),
  };
}
