// The binding chain: every timed step remembers the one completion that bound its start; folded, so that a year fits in memory.

/** Nodes held before the chain is due for folding; few enough to stay in a processor's fast memory. */
const usualFoldAt = 1 << 13;

/** Time along a chain, in ticks by activity; `tied` is the part of it whose start had more than one latest completion. */
export interface ChainTotals {
  readonly ticks: Float64Array;
  readonly tied: Float64Array;
}

/**
 * A forest of links from each timed step back to the step whose completion bound its start. The time from a node's start to the
 * start of its child belongs to the node's activity, so that a walk back from any node tiles the time without gap or overlap.
 *
 * Folding keeps the live nodes and those where their paths meet; what lies between two kept nodes is summed up by activity. So
 * at most twice as many nodes survive a fold as there are live ones, exactly and whatever the length of the run.
 */
export class BindingChain {
  readonly #activities: number;
  readonly #foldAt: number;
  #nextFold: number;
  #start: Float64Array;
  /** Of each node its parent and, in the next place, twice its activity and 1 where it is tied. */
  #links: Int32Array;
  /** Where an edge was folded: ticks by activity from the start of the parent to this node's start, then the tied part of each. */
  #folded: (Float64Array | undefined)[] = [];
  #size = 0;

  constructor(activities: number, foldAt = usualFoldAt) {
    this.#activities = activities;
    this.#foldAt = foldAt;
    this.#nextFold = foldAt;
    const room = Math.min(foldAt, usualFoldAt) + 64;
    this.#start = new Float64Array(room);
    this.#links = new Int32Array(2 * room);
  }

  /** True when the next `add` calls should be preceded by `fold`. */
  get isFull(): boolean {
    return this.#size >= this.#nextFold;
  }

  /** Adds a timed step that starts at this tick; `parent` is the node that bound it, or -1 at the
   * beginning; `tied` is 1 where another one was complete as late. */
  add(activity: number, start: number, parent: number, tied: number): number {
    const node = this.#size++;
    if (node >= this.#start.length) this.#grow();
    this.#start[node] = start;
    this.#links[2 * node] = parent;
    this.#links[2 * node + 1] = 2 * activity + tied;
    return node;
  }

  /** The node added last, -1 where there is none. */
  get last(): number {
    return this.#size - 1;
  }

  startOf(node: number): number {
    return this.#start[node]!;
  }

  activityOf(node: number): number {
    return this.#links[2 * node + 1]! >> 1;
  }

  /** The node that bound this one's start, -1 at the beginning; after a fold the next one that was kept. */
  parentOf(node: number): number {
    return this.#links[2 * node]!;
  }

  isTied(node: number): boolean {
    return (this.#links[2 * node + 1]! & 1) === 1;
  }

  /** Adds up the way back from `node` to the beginning, of what lies before `end`; later nodes must not have been folded. */
  totals(node: number, end: number): ChainTotals {
    const sums = new Float64Array(2 * this.#activities);
    let last = node;
    while (last !== -1 && this.#start[last]! > end) last = this.parentOf(last);
    if (last !== -1) this.#addSpan(sums, last, end);
    this.#addWay(sums, last, -1);
    return { ticks: sums.slice(0, this.#activities), tied: sums.slice(this.#activities) };
  }

  /**
   * Forgets all but the live nodes and the meeting points of their paths.
   * Returns the new number of each old node, -1 where it was forgotten.
   */
  fold(live: readonly number[]): Int32Array {
    const keep = this.#meetingPoints(live);
    const renumbered = new Int32Array(this.#size).fill(-1);
    const folded: (Float64Array | undefined)[] = [];
    const kept: number[] = [];
    const ancestors: number[] = [];
    for (let node = 0; node < this.#size; node++) {
      if (keep[node] === 0) continue;
      const ancestor = this.#keptAncestor(node, keep);
      folded.push(ancestor === this.parentOf(node) ? this.#folded[node] : this.#wayBetween(node, ancestor));
      // A parent is always older than its children: it has its new number by now.
      ancestors.push(ancestor === -1 ? -1 : renumbered[ancestor]!);
      renumbered[node] = kept.push(node) - 1;
    }
    for (let i = 0; i < kept.length; i++) {
      const node = kept[i]!;
      this.#start[i] = this.#start[node]!;
      this.#links[2 * i] = ancestors[i]!;
      this.#links[2 * i + 1] = this.#links[2 * node + 1]!;
    }
    this.#folded = folded;
    this.#size = kept.length;
    // Where very much is alive, as in a queue that grows, folding again at once would be in vain.
    this.#nextFold = Math.max(this.#foldAt, 2 * kept.length);
    return renumbered;
  }

  /** Lets every live node begin anew at `tick`, as if nothing had been before: the end of a warm-up. */
  restart(live: readonly number[], tick: number): Int32Array {
    const renumbered = this.fold(live);
    this.#folded = [];
    this.#start.fill(tick, 0, this.#size);
    for (let node = 0; node < this.#size; node++) this.#links[2 * node] = -1;
    return renumbered;
  }

  /** Kept are the live nodes and every node at which two ways meet. */
  #meetingPoints(live: readonly number[]): Uint8Array {
    const keep = new Uint8Array(this.#size);
    const ways = new Uint8Array(this.#size);
    for (const head of live) {
      if (head === -1) continue;
      keep[head] = 1;
      for (let at = head; ways[at] === 0;) {
        ways[at] = 1;
        const parent = this.parentOf(at);
        if (parent === -1) break;
        if (ways[parent] !== 0) keep[parent] = 1;
        at = parent;
      }
    }
    return keep;
  }

  #wayBetween(node: number, ancestor: number): Float64Array {
    const sums = new Float64Array(2 * this.#activities);
    this.#addWay(sums, node, ancestor);
    return sums;
  }

  #keptAncestor(node: number, keep: Uint8Array): number {
    let at = this.parentOf(node);
    while (at !== -1 && !keep[at]) at = this.parentOf(at);
    return at;
  }

  /** Adds what lies between the start of `ancestor` (-1: the beginning) and the start of `node`. */
  #addWay(sums: Float64Array, node: number, ancestor: number): void {
    for (let at = node; at !== ancestor;) {
      const parent = this.parentOf(at);
      const folded = this.#folded[at];
      if (folded) for (let i = 0; i < folded.length; i++) sums[i]! += folded[i]!;
      else if (parent !== -1) this.#addSpan(sums, parent, this.#start[at]!);
      at = parent;
    }
  }

  #addSpan(sums: Float64Array, node: number, end: number): void {
    const activity = this.activityOf(node);
    const ticks = end - this.#start[node]!;
    sums[activity]! += ticks;
    if (this.isTied(node)) sums[this.#activities + activity]! += ticks;
  }

  #grow(): void {
    const [start, links] = [this.#start, this.#links];
    this.#start = new Float64Array(2 * start.length);
    this.#links = new Int32Array(2 * links.length);
    this.#start.set(start);
    this.#links.set(links);
  }
}
