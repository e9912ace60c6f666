// The event list: one pending time for each process, earliest first, equal times in the processes' order.

/** Up to this many processes a scan of all pending times beats a heap (measured: the benchmark prints both). */
const scanUpTo = 8;

export class EventList {
  /** Tick at which each process's pending time is up; Infinity where nothing is pending. */
  readonly due: Float64Array;
  readonly #heap: Int32Array;
  readonly #position: Int32Array;
  #size = 0;
  /** Few enough processes: the earliest is looked for in `due` each time. */
  readonly scans: boolean;

  /** `due` may lie in an array that others look into. */
  constructor(processes: number, due: Float64Array = new Float64Array(processes)) {
    this.due = due.fill(Infinity);
    this.#heap = new Int32Array(processes);
    this.#position = new Int32Array(processes).fill(-1);
    this.scans = processes <= scanUpTo;
  }

  /** Sets or changes the pending time of a process. */
  set(process: number, tick: number): void {
    this.due[process] = tick;
    this.moved(process);
  }

  /** To be called when a pending time has been written to `due` directly. */
  moved(process: number): void {
    if (this.scans) return;
    if (this.#position[process] === -1) {
      this.#position[process] = this.#size;
      this.#heap[this.#size++] = process;
    }
    this.#rise(this.#position[process]!);
    this.#sink(this.#position[process]!);
  }

  clear(process: number): void {
    this.due[process] = Infinity;
    const at = this.#position[process]!;
    if (this.scans || at === -1) return;
    const last = this.#heap[--this.#size]!;
    this.#position[process] = -1;
    if (last === process) return;
    this.#heap[at] = last;
    this.#position[last] = at;
    this.#rise(at);
    this.#sink(this.#position[last]);
  }

  /** The process that is due first, or -1 where nothing is pending. */
  first(): number {
    if (!this.scans) return this.#size === 0 ? -1 : this.#heap[0]!;
    const due = this.due;
    let best = -1;
    let bestTick = Infinity;
    for (let process = 0; process < due.length; process++) {
      if (due[process]! < bestTick) {
        bestTick = due[process]!;
        best = process;
      }
    }
    return best;
  }

  #before(a: number, b: number): boolean {
    const difference = this.due[a]! - this.due[b]!;
    return difference < 0 || (difference === 0 && a < b);
  }

  #rise(from: number): void {
    const process = this.#heap[from]!;
    let at = from;
    while (at > 0) {
      const above = (at - 1) >>> 1;
      const other = this.#heap[above]!;
      if (!this.#before(process, other)) break;
      this.#heap[at] = other;
      this.#position[other] = at;
      at = above;
    }
    this.#heap[at] = process;
    this.#position[process] = at;
  }

  #sink(from: number): void {
    const process = this.#heap[from]!;
    let at = from;
    for (;;) {
      let below = 2 * at + 1;
      if (below >= this.#size) break;
      if (below + 1 < this.#size && this.#before(this.#heap[below + 1]!, this.#heap[below]!)) below++;
      const other = this.#heap[below]!;
      if (!this.#before(other, process)) break;
      this.#heap[at] = other;
      this.#position[other] = at;
      at = below;
    }
    this.#heap[at] = process;
    this.#position[process] = at;
  }
}
