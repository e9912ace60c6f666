// Who waits at each place, and whom its rule serves next.
import type { ProcessStates } from "./processStates.ts";
import { LONGEST_SINCE_SERVED, PRIORITY, ROTATION, type Program } from "./program.ts";
import type { ResourceStates } from "./resourceStates.ts";
import type { Need, Row } from "./row.ts";
import type { TokenQueues } from "./tokenQueues.ts";

export class WaitingLines {
  /** Taker whose turn it is, by its number among the takers. */
  readonly turn: Int32Array;
  /** Waiting processes of each place, in no order; the first `lengths` of them count. */
  readonly waiters: readonly Int32Array[];
  readonly lengths: Int32Array;
  readonly #program: Program;
  readonly #clock: Float64Array;
  readonly #processes: ProcessStates;
  readonly #resources: ResourceStates;
  readonly #tokens: TokenQueues;
  readonly #touched: Uint8Array;
  /** Places at which something has changed. */
  touchedPlaces = 0;

  constructor(
    program: Program,
    clock: Float64Array,
    processes: ProcessStates,
    resources: ResourceStates,
    tokens: TokenQueues,
  ) {
    const places = program.takers.length;
    this.#program = program;
    this.#clock = clock;
    this.#processes = processes;
    this.#resources = resources;
    this.#tokens = tokens;
    this.turn = new Int32Array(places);
    this.waiters = program.takers.map((takers) => new Int32Array(takers.length));
    this.lengths = new Int32Array(places);
    this.#touched = new Uint8Array(places);
  }

  /** `isNews`: somebody may be served now, or show something else. */
  join(place: number, process: number, isNews: boolean): void {
    this.waiters[place]![this.lengths[place]!++] = process;
    if (isNews) this.#touch(place);
  }

  leave(place: number, process: number): void {
    const waiters = this.waiters[place]!;
    let at = 0;
    while (waiters[at] !== process) at++;
    waiters[at] = waiters[--this.lengths[place]!]!;
  }

  /** Something at this place has changed: whoever needs it may now be served, or wait for something else. */
  changed(place: number): void {
    const lines = this.#program.lines[place]!;
    for (let i = 0; i < lines.length; i++) if (this.lengths[lines[i]!]! > 0) this.#touch(lines[i]!);
  }

  changedAll(): void {
    for (let place = 0; place < this.lengths.length; place++) if (this.lengths[place]! > 0) this.#touch(place);
  }

  /** The first place at which something has changed; it counts as seen. */
  nextChanged(): number {
    let place = 0;
    while (this.#touched[place] === 0) place++;
    this.#touched[place] = 0;
    this.touchedPlaces--;
    return place;
  }

  #touch(place: number): void {
    if (this.#touched[place] === 1) return;
    this.#touched[place] = 1;
    this.touchedPlaces++;
  }

  /** Takes out of the line whoever is served next; -1 where nobody can be. */
  serve(place: number): number {
    const process = this.#foremost(place, true);
    if (process === -1) return -1;
    this.leave(place, process);
    const rule = this.#program.servingRule[place];
    // A process counts as served by the place that goes by it: one that fetched an operator has not had its shot.
    if (rule === LONGEST_SINCE_SERVED) this.#processes.servedAt[process] = this.#clock[0]!;
    if (rule === ROTATION) {
      const takers = this.#program.takers[place]!;
      this.turn[place] = (takers.indexOf(process) + 1) % takers.length;
    }
    return process;
  }

  isReady(process: number, step: Row): boolean {
    for (let i = 0; i < step.gates.length; i++) if (this.#resources.stopCount[step.gates[i]!]! > 0) return false;
    for (let i = 0; i < step.needs.length; i++) if (!this.isMet(process, step.needs[i]!)) return false;
    return true;
  }

  isMet(process: number, need: Need): boolean {
    return this.#tokens.sizes[need.place + this.#processes.register(process, need.by)]! >= need.count;
  }

  /** The state in which a waiter shows its first need that is not met, or -1. */
  waitingState(place: number, process: number): number {
    const { needs } = this.#program.rows[this.#processes.row[process]!]!;
    for (let n = 0; n < needs.length; n++) if (needs[n]!.quiet && !this.isMet(process, needs[n]!)) return -1;
    for (let n = 0; n < needs.length; n++) {
      const need = needs[n]!;
      if (!this.isMet(process, need)) return need.meanwhile;
      if (n === 0 && process !== this.#foremost(place, false)) return need.othersTurn;
    }
    return -1;
  }

  /** The waiter that the rule names, among those that could start or among all; -1 where there is none. */
  #foremost(place: number, onlyReady: boolean): number {
    const rule = this.#program.servingRule[place]!;
    const { rows } = this.#program;
    const { row, priority, servedAt, askedAt } = this.#processes;
    const waiters = this.waiters[place]!;
    const count = this.lengths[place]!;
    if (count === 0) return -1;
    if (count === 1 && rule !== ROTATION) {
      const only = waiters[0]!;
      return !onlyReady || this.isReady(only, rows[row[only]!]!) ? only : -1;
    }
    const inTurn = rule === ROTATION ? this.#inTurn(place) : -1;
    const key = rule === PRIORITY ? priority : rule === LONGEST_SINCE_SERVED ? servedAt : askedAt;
    let best = -1;
    for (let i = 0; i < count; i++) {
      const process = waiters[i]!;
      if (rule === ROTATION ? process !== inTurn : best !== -1 && this.#isBehind(process, best, key)) continue;
      if (!onlyReady || this.isReady(process, rows[row[process]!]!)) best = process;
    }
    return best;
  }

  /** Equal keys: the process listed first is served first. */
  #isBehind(process: number, other: number, key: Float64Array): boolean {
    const difference = key[process]! - key[other]!;
    return difference > 0 || (difference === 0 && process > other);
  }

  /** The next taker in rotation that is not stopped. */
  #inTurn(place: number): number {
    const takers = this.#program.takers[place]!;
    for (let i = 0; i < takers.length; i++) {
      const process = takers[(this.turn[place]! + i) % takers.length]!;
      if (this.#resources.stopCount[this.#program.ownResource[process]!] === 0) return process;
    }
    return -1;
  }
}
