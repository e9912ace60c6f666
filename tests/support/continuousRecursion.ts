/**
 * A second, independent account of the cell with a continuous extruder: one pass over its parisons, with no event queue.
 *
 * Why one pass is enough. Removal is by machine and the rule is first-ready: a parison fixes when its mold is clear again, and
 * the mold that has been clear longest is the next to travel in.
 *
 * Choices where the contract is silent:
 * - the next parison grows from the same instant at which the last one had to be full, so that parisons follow one another
 *   at P when melt binds. `fullAt` says which instant: the end of the cut (the contract's words taken literally), its start, or the
 *   start of the close. With equal fixed times all three give the same period; with drawn times only the same means;
 * - the wait under the die lies before the close, and it ends early enough for the parison to be full at `fullAt`: the
 *   mold knows how long its own close and cut will take. The parison is therefore never short;
 * - the die zone is taken from the start of travel in to the end of travel out; the next mold does not follow closer;
 * - which mold comes next is settled when the die zone is free and a mold is clear: earliest clear first, then the order of stations;
 * - a parison takes the time of the station that catches it, although that is settled after it has begun to grow; the n-th draw is the
 *   n-th parison's, the one that hangs at the start of a running cell not counted;
 * - excess is counted in ticks from the instant at which the parison was full to `fullAt`, as a step of its own of the plasticator;
 * - `running`: a full parison hangs at 0, and what it grows until it is caught is excess; `cold`: growth begins at 0. Molds are clear.
 *
 * Not here: operators, other rules of dispatch, a removal that is not on the mold's circuit (leave it out of `steps`), the
 * matched rate (it is a matter of what `durations` returns for `parison`), stops of the screw.
 */
import type { Durations, StepInterval } from "./shotRecursion.ts";
import { earliestOf, StepLedger } from "./stepLedger.ts";

export interface ContinuousCell {
  /** In order of ties. */
  readonly stations: readonly {
    readonly name: string;
    /** All steps in order: `travel in`, `close`, `cut`, `travel out`, then those that end with a clear mold; others may stand between. */
    readonly steps: readonly string[];
  }[];
  readonly fullAt: "start of close" | "start of cut" | "end of cut";
  readonly start: "running" | "cold";
}

/** A station's steps, parted where something is waited for, caught or set free. */
interface Parts {
  readonly toDie: readonly string[];
  readonly untilFull: readonly string[];
  readonly toFreeDie: readonly string[];
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
  for (let parison = 0; ledger.includes(caught); parison += 1) {
    const station = earliestOf(clear);
    const { toDie, untilFull, toFreeDie, mold } = parts[station]!;
    const lay = (steps: readonly string[], from: number): number =>
      steps.reduce((start, step) => ledger.lay(names[station]!, step, station, start), from);
    const hangs = parison === 0 && cell.start === "running";
    const full = hangs ? 0 : ledger.lay("plasticator", "parison", station, caught);
    const underDie = lay(toDie, Math.max(dieFree, clear[station]!));
    const ahead = untilFull.reduce((sum, step) => sum + ledger.ticksOfNext(names[station]!, step, station), 0);
    caught = lay(untilFull, Math.max(underDie, full - ahead));
    if (caught > full) ledger.note("plasticator", "excess", station, full, caught);
    dieFree = lay(toFreeDie, caught);
    clear[station] = lay(mold, dieFree);
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
    toFreeDie: steps.slice(full, travelOut + 1),
    mold: steps.slice(travelOut + 1),
  };
}
