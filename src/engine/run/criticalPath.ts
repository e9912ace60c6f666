// The critical path in the core: every timed step stores the completion that bound its start.
import type { Core } from "./openCore.ts";

/** Time along a chain, in ticks by activity; `tied` is the part of it whose start had more than one latest completion. */
export interface ChainTotals {
  readonly ticks: Float64Array;
  readonly tied: Float64Array;
}

/** A forest of links from each timed step back to the step whose completion bound its start; nodes are numbered from 0. */
export class CriticalPath {
  readonly #core: Core;
  readonly #activities: number;

  constructor(core: Core, activities: number) {
    this.#core = core;
    this.#activities = activities;
  }

  /** The node added last, -1 where there is none. */
  get last(): number {
    return this.#core.lastNode();
  }

  startOf(node: number): number {
    return this.#core.startOf(node);
  }

  activityOf(node: number): number {
    return this.#core.activityOf(node);
  }

  /** The node that bound this one's start, -1 at the beginning; after a fold the next one that was kept. */
  parentOf(node: number): number {
    return this.#core.parentOf(node);
  }

  isTied(node: number): boolean {
    return this.#core.isTied(node) === 1;
  }

  /** Adds up the way back from `node` to the beginning, of what lies before `end`; later nodes must not have been folded. */
  totals(node: number, end: number): ChainTotals {
    const at = this.#core.totalsOf(node, end);
    const both = new Float64Array(this.#core.memory.buffer, at, 2 * this.#activities);
    return { ticks: both.slice(0, this.#activities), tied: both.slice(this.#activities) };
  }
}
