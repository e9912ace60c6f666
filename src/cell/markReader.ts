// Runs a simulation on piece by piece and hands each rise of a marked counter to whoever reads it, so that few are ever held.
import { TICKS_PER_SECOND } from "#engine/sampler.ts";
import type { Simulation } from "#engine/simulation.ts";
import { slowestTurn, type CellPlan } from "./planCell.ts";

/** A run is read so many turns of the cell at a time. */
const turnsRead = 250;

/** Is handed the tick of each rise of its counter. */
export type Reader = (tick: number) => void;

export class MarkReader {
  readonly #simulation: Simulation;
  readonly #slice: number;
  /** By counter; what nobody reads here, such as a stop, stays with the simulation. */
  readonly #readers: readonly (Reader | undefined)[];

  /** Several readers of one counter are served in their order. */
  constructor(
    simulation: Simulation,
    plan: CellPlan,
    readers: readonly (readonly [counter: string, reader: Reader])[],
  ) {
    this.#simulation = simulation;
    this.#slice = Math.max(TICKS_PER_SECOND, Math.round(turnsRead * slowestTurn(plan)));
    this.#readers = plan.program.counters.map((name) => {
      const own = readers.filter(([counter]) => counter === name).map(([, reader]) => reader);
      if (own.length < 2) return own[0];
      return (tick) => own.forEach((reader) => reader(tick));
    });
  }

  runUntil(tick: number): void {
    // Also where the run is there already, since its first instant may still be due.
    do {
      const { now, standstill } = this.#simulation;
      this.#simulation.runUntil(standstill ? tick : Math.min(tick, now + this.#slice));
      this.#read();
    } while (this.#simulation.now < tick);
  }

  #read(): void {
    const { ticks, counters } = this.#simulation.marks;
    let left = 0;
    for (let i = 0; i < ticks.length; i++) {
      const reader = this.#readers[counters[i]!];
      if (reader) reader(ticks[i]!);
      else {
        ticks[left] = ticks[i]!;
        counters[left++] = counters[i]!;
      }
    }
    ticks.length = left;
    counters.length = left;
  }
}
