// The simulation: runs the rows of a program against the clock, one instant after another, and keeps what is asked of it.
import { invariant } from "#foundation/invariant.ts";
import { BindingChain, type ChainTotals } from "./bindingChain.ts";
import { EventList } from "./eventList.ts";
import type { EventLog } from "./eventLog.ts";
import { CARGO, HOLDS, NO_REGISTER, RUNS_ON, type Draw, type Give, type Need, type Program, type Row } from "./program.ts";
import { openStream, type Stream } from "./stream.ts";
import { TokenQueues } from "./tokenQueues.ts";

/** What a process is doing: between steps, waiting for needs, in a timed step, in one that is held or whose clock stands still. */
const IDLE = 0;
const NEEDING = 1;
const TIMED = 2;
const HELD = 3;
const STILL = 4;

/** A process's own step among completions that are latest at once. */
const ownRank = 3;

/** Steps within one instant after which time is taken to stand still for ever. */
const hopsAnInstant = 100_000;

/** Instants after the end of the observation within which a wait is expected to be over. */
const runOnInstants = 20_000;

export interface SimulationOptions {
  readonly seed: string;
  readonly replication: number;
  /** Every time is the mean of its law: nothing is drawn. */
  readonly atMeans?: boolean;
  readonly log?: EventLog;
  readonly flow?: FlowRecorder;
}

/** Told of every step that starts and of every completion that it needed; for the event graph. */
export interface FlowRecorder {
  started(node: number, row: number, tick: number, ticks: number): void;
  needed(node: number, before: number): void;
}

/** Why nothing can ever happen again, or why time stands still: each waiting process, its step and the place that it lacks. */
export interface Standstill {
  readonly kind: "deadlock" | "zero-time loop";
  readonly tick: number;
  readonly waiting: readonly { readonly process: string; readonly step: string; readonly lacks: string }[];
}

export class Simulation {
  readonly program: Program;
  now = 0;
  standstill: Standstill | undefined;
  /** Ticks in each state, and each counter, since the observation began; states are up to date after `settle`. */
  readonly stateTicks: Float64Array;
  readonly counts: Float64Array;
  readonly chain: BindingChain;
  /** Ticks at which a marked counter was raised, and which one. */
  readonly marks: { ticks: number[]; counters: number[] } = { ticks: [], counters: [] };

  readonly #events: EventList;
  readonly #tokens: TokenQueues;
  readonly #streams: readonly Stream[];
  readonly #options: SimulationOptions;
  readonly #phase: Uint8Array;
  readonly #row: Int32Array;
  readonly #cargo: Int32Array;
  readonly #hand: Int32Array;
  readonly #cycle: Int32Array;
  readonly #head: Int32Array;
  readonly #headTime: Float64Array;
  readonly #tied: Uint8Array;
  readonly #remaining: Float64Array;
  readonly #pausedAt: Float64Array;
  readonly #askedAt: Float64Array;
  readonly #servedAt: Float64Array;
  readonly #priority: Float64Array;
  readonly #state: Int32Array;
  readonly #since: Float64Array;
  /** The state that a stopped resource would show, and whether its physics run on. */
  readonly #under: Int32Array;
  readonly #physics: Uint8Array;
  readonly #stopCount: Int32Array;
  readonly #waiters: number[][];
  readonly #gated: number[] = [];
  readonly #turn: Int32Array;
  readonly #dirty: Uint8Array;
  #anyDirty = false;
  #hops = 0;
  #lastReleased = -1;
  /** The observation is over: the chain must keep every node, since it is still cut at the end of the observation. */
  #runsOn = false;
  #marked: Uint8Array;
  #flowNodes = 0;

  constructor(program: Program, options: SimulationOptions, marked: readonly string[] = []) {
    const processes = program.table.processes;
    const places = program.table.places;
    this.program = program;
    this.#options = options;
    this.#events = new EventList(processes.length);
    this.#tokens = new TokenQueues(places.length);
    this.#streams = options.atMeans ? [] : program.streams.map((s) => openStream(options.seed, options.replication, s.resource, s.step));
    this.stateTicks = new Float64Array(program.states.length);
    this.counts = new Float64Array(program.counters.length);
    this.chain = new BindingChain(program.activities.length);
    this.#phase = new Uint8Array(processes.length);
    this.#row = new Int32Array(processes.length);
    this.#cargo = Int32Array.from(processes, (process) => process.cargo ?? 0);
    this.#hand = new Int32Array(processes.length).fill(-1);
    this.#cycle = new Int32Array(processes.length);
    this.#head = new Int32Array(processes.length).fill(-1);
    this.#headTime = new Float64Array(processes.length);
    this.#tied = new Uint8Array(processes.length);
    this.#remaining = new Float64Array(processes.length);
    this.#pausedAt = new Float64Array(processes.length);
    this.#askedAt = new Float64Array(processes.length);
    this.#servedAt = new Float64Array(processes.length).fill(-1);
    this.#priority = Float64Array.from(processes, (process) => process.priority ?? 0);
    this.#state = program.firstState.slice();
    this.#since = new Float64Array(program.firstState.length);
    this.#under = program.firstState.slice();
    this.#physics = new Uint8Array(program.firstState.length);
    this.#stopCount = new Int32Array(program.firstState.length);
    this.#waiters = places.map(() => []);
    this.#turn = new Int32Array(places.length);
    this.#dirty = new Uint8Array(places.length);
    this.#marked = Uint8Array.from(program.counters, (name) => (marked.includes(name) ? 1 : 0));
    this.#begin(places, processes.length);
  }

  #begin(places: Program["table"]["places"], processes: number): void {
    places.forEach((place, number) => {
      for (let i = 0; i < place.tokens; i++) this.#tokens.put(number, 0, -1, place.cargo === "numbered" ? i : (place.cargo ?? 0));
    });
    const { log } = this.#options;
    if (log) this.program.firstState.forEach((state, resource) => log.add(0, resource, state, -1, -1, -1, -1, 0));
    for (let process = 0; process < processes; process++) this.#enter(process, this.program.beginsAt[process]!);
    this.#decide();
  }

  /** Runs every instant up to and including `tick`, or until nothing can happen any more. */
  runUntil(tick: number): void {
    const events = this.#events;
    for (;;) {
      const process = events.first();
      if (process === -1) return this.#stuck("deadlock");
      const due = events.due[process]!;
      if (due > tick) break;
      if (due > this.now) {
        this.now = due;
        this.#hops = 0;
      }
      events.clear(process);
      this.#complete(process);
      const following = events.first();
      if (following === -1 || events.due[following]! > due) this.#decide();
      if (this.standstill) return;
      if (this.chain.isFull && !this.#runsOn) this.#renumber(this.chain.fold(this.#liveNodes()));
    }
    this.now = tick;
  }

  /** Forgets what was observed so far; the system goes on as it is. */
  restartObservation(): void {
    this.settle();
    this.stateTicks.fill(0);
    this.counts.fill(0);
    this.marks.ticks.length = 0;
    this.marks.counters.length = 0;
    this.#renumber(this.chain.restart(this.#liveNodes(), this.now));
  }

  /** Books the time since each resource's last change of state. */
  settle(): void {
    for (let resource = 0; resource < this.#state.length; resource++) {
      this.stateTicks[this.#state[resource]!]! += this.now - this.#since[resource]!;
      this.#since[resource] = this.now;
    }
  }

  /**
   * The binding chain of each process from `now` back to the beginning of the observation; call it after everything else has
   * been read. What binds a process that waits is known only when its wait is over: the system runs on until then. One that
   * goes on waiting, since others are always served before it, is taken to wait for the step that started last.
   */
  chainsOf(processes: readonly number[]): ChainTotals[] {
    const end = this.now;
    const heads = new Map<number, number>();
    const collect = (): void => {
      for (const process of processes) {
        if (!heads.has(process) && this.#phase[process] !== NEEDING) heads.set(process, this.#head[process]!);
      }
    };
    this.#runsOn = true;
    collect();
    for (let instant = 0; heads.size < processes.length && instant < runOnInstants && !this.standstill; instant++) {
      const first = this.#events.first();
      if (first === -1) break;
      this.runUntil(this.#events.due[first]!);
      collect();
    }
    return processes.map((process) => this.chain.totals(heads.get(process) ?? this.chain.last, end));
  }

  /** Everything that decides how the system goes on when no time is drawn, as text: equal texts, equal futures. */
  signature(): string {
    const ages = (ticks: Float64Array): number[] => Array.from(ticks, (tick) => (tick < 0 ? -1 : this.now - tick));
    const processes = Array.from(this.#phase, (phase, p) => {
      const left = phase === TIMED ? this.#events.due[p]! - this.now : phase === HELD || phase === STILL ? this.#remaining[p]! : 0;
      return [phase, this.#row[p], this.#cargo[p], this.#hand[p], left, phase === NEEDING ? this.now - this.#askedAt[p]! : 0];
    });
    const served = this.program.table.places.some((place) => place.rule === "longest-since-served") ? ages(this.#servedAt) : [];
    const order = Array.from(served.keys()).toSorted((a, b) => served[b]! - served[a]! || a - b);
    const tokens = this.program.table.places.map((_, place) => this.#tokens.size(place));
    return JSON.stringify([processes, order, tokens, Array.from(this.#turn), Array.from(this.#stopCount)]);
  }

  // One process

  #complete(process: number): void {
    if (this.#phase[process] === NEEDING) {
      this.#leave(process, this.program.rows[this.#row[process]!]!.patienceNext);
      return;
    }
    this.#headTime[process] = this.now;
    this.#phase[process] = IDLE;
    this.#enter(process, this.#finish(process));
  }

  /** Goes through steps until one takes time or has to wait. */
  #enter(process: number, row: number): void {
    for (let at = row; ; at = this.#finish(process)) {
      if (++this.#hops > hopsAnInstant) return this.#stuck("zero-time loop");
      this.#row[process] = at;
      const step = this.program.rows[at]!;
      if (step.needs.length > 0 || step.gates.length > 0) {
        if (!step.takesAlone || !this.#isReady(process, step)) return this.#wait(process, step);
        this.#take(process, step);
      }
      if (this.#start(process, step)) return;
    }
  }

  #wait(process: number, step: Row): void {
    this.#phase[process] = NEEDING;
    this.#askedAt[process] = this.now;
    if (step.patience) this.#events.set(process, this.now + this.#drawTicks(process, step.patience));
    const lead = step.needs[0];
    if (!lead) {
      this.#gated.push(process);
      return this.#showHeldBack(step);
    }
    const place = lead.place + this.#register(process, lead.by);
    this.#waiters[place]!.push(process);
    this.#touch(place);
  }

  /** Returns true where the step takes time. */
  #start(process: number, step: Row): boolean {
    if (step.stops !== -1) this.#stop(step.stops, step.stopsRule);
    const log = this.#options.log ?? null;
    for (let i = 0; i < step.shows.length; i++) {
      const show = step.shows[i]!;
      const state = show.states.length === 1 ? show.states[0]! : show.states[this.#cargo[process]!]!;
      const resource = show.resource + this.#register(process, show.by);
      this.#show(resource, state + (resource === show.resource ? 0 : this.program.firstState[resource]! - this.program.firstState[show.resource]!), step.isPhysics);
      if (log) this.#logStart(log, process, resource);
    }
    if (!step.draw) {
      if (this.#options.flow && step.needs.length > 0) this.#flowNode(process, 0);
      return false;
    }
    const ticks = this.#drawTicks(process, step.draw);
    this.#link(process, step.activity);
    if (this.#options.flow) this.#flowNode(process, ticks);
    this.#phase[process] = TIMED;
    if (step.draw.clock !== -1 && !this.program.isWorking[this.#state[step.draw.clock]!]) {
      this.#phase[process] = STILL;
      this.#remaining[process] = ticks;
    } else this.#events.set(process, this.now + ticks);
    return true;
  }

  /** Gives and counts what the step under way ends with; returns the next row. */
  #finish(process: number): number {
    const step = this.program.rows[this.#row[process]!]!;
    const gives = step.gives;
    for (let i = 0; i < gives.length; i++) this.#give(process, gives[i]!);
    for (let i = 0; i < step.counters.length; i++) {
      const counter = step.counters[i]!;
      this.counts[counter]! += step.amounts[i]!;
      if (this.#marked[counter]) {
        this.marks.ticks.push(this.now);
        this.marks.counters.push(counter);
      }
    }
    if (step.releases !== -1) this.#release(step.releases);
    if (step.chance > 0 && this.#streams[step.chanceStream]!() < step.chance) return step.chanceNext;
    if (step.next <= this.#row[process]!) this.#cycle[process]!++;
    return step.next;
  }

  #give(process: number, give: Give): void {
    const place = give.place + this.#register(process, give.by);
    const number = give.carries === CARGO ? this.#cargo[process]! : this.#hand[process]!;
    for (let n = 0; n < give.count; n++) this.#tokens.put(place, this.now, this.#head[process]!, number);
    const queues = this.program.queues[place]!;
    for (let i = 0; i < queues.length; i++) if (this.#waiters[queues[i]!]!.length > 0) this.#touch(queues[i]!);
  }

  #drawTicks(process: number, draw: Draw): number {
    const samplers = draw.samplers;
    const sampler = samplers.length === 1 ? samplers[0]! : samplers[this.#cargo[process]!]!;
    if (this.#options.atMeans) return Math.round(sampler.meanTicks);
    return sampler.ticks(sampler.isFixed ? 0 : this.#streams[draw.stream]!());
  }

  #register(process: number, by: number): number {
    return by === NO_REGISTER ? 0 : by === CARGO ? this.#cargo[process]! : this.#hand[process]!;
  }

  // Taking and what bound it

  #isReady(process: number, step: Row): boolean {
    for (let i = 0; i < step.gates.length; i++) if (this.#stopCount[step.gates[i]!]! > 0) return false;
    for (let i = 0; i < step.needs.length; i++) if (!this.#isMet(process, step.needs[i]!)) return false;
    return true;
  }

  #isMet(process: number, need: Need): boolean {
    return this.#tokens.size(need.place + this.#register(process, need.by)) >= need.count;
  }

  /** Takes all needs; the latest of their completions and of the process's own last step binds what follows. */
  #take(process: number, step: Row): void {
    const tokens = this.#tokens;
    let latest = this.#headTime[process]!;
    let node = this.#head[process]!;
    let rank = ownRank;
    let tied = 0;
    for (let i = 0; i < step.needs.length; i++) {
      const need = step.needs[i]!;
      const place = need.place + this.#register(process, need.by);
      const placeRank = this.program.table.places[place]!.rank ?? ownRank + 1;
      for (let n = 0; n < need.count; n++) {
        tokens.take(place);
        this.#options.flow?.needed(this.#flowNodes, tokens.node);
        const isLater = tokens.time > latest;
        const isEqual = tokens.time === latest;
        tied = isLater ? 0 : isEqual ? 1 : tied;
        if (isLater || (isEqual && placeRank < rank)) {
          latest = tokens.time;
          node = tokens.node;
          rank = placeRank;
        }
      }
      if (need.takes === CARGO) this.#cargo[process] = tokens.cargo;
      else if (need.takes !== NO_REGISTER) this.#hand[process] = tokens.cargo;
    }
    this.#options.flow?.needed(this.#flowNodes, this.#head[process]!);
    this.#head[process] = node;
    this.#headTime[process] = latest;
    this.#tied[process] = tied;
    this.#phase[process] = IDLE;
  }

  /** Adds the step to the chain; what lies between its latest completion and its start can only be a stop. */
  #link(process: number, activity: number): void {
    if (this.#options.flow) return;
    let head = this.#head[process]!;
    if (this.#headTime[process]! < this.now && this.#lastReleased !== -1) {
      head = this.chain.add(this.program.stoppedActivity[this.#lastReleased]!, this.#headTime[process]!, head, false);
    }
    this.#head[process] = this.chain.add(activity, this.now, head, this.#tied[process] === 1);
    this.#tied[process] = 0;
  }

  /** In a flow record every step that takes something is a node of its own, timed or not. */
  #flowNode(process: number, ticks: number): void {
    const flow = this.#options.flow!;
    const node = this.#flowNodes++;
    const row = this.program.rows[this.#row[process]!]!;
    if (row.needs.length === 0 && row.gates.length === 0) flow.needed(node, this.#head[process]!);
    flow.started(node, this.#row[process]!, this.now, ticks);
    this.#head[process] = node;
  }

  // Deciding who is served

  #touch(place: number): void {
    this.#dirty[place] = 1;
    this.#anyDirty = true;
  }

  /** After everything that completes at this instant: serves, place by place, whoever the rule names, until nobody can be served. */
  #decide(): void {
    while (this.#anyDirty && !this.standstill) {
      this.#anyDirty = false;
      for (let place = 0; place < this.#dirty.length; place++) {
        if (!this.#dirty[place]) continue;
        this.#dirty[place] = 0;
        this.#serve(place);
      }
    }
  }

  #serve(place: number): void {
    const waiters = this.#waiters[place]!;
    for (;;) {
      const process = waiters.length === 0 ? -1 : this.#foremost(place, true);
      if (process === -1) break;
      waiters.splice(waiters.indexOf(process), 1);
      this.#events.clear(process);
      const step = this.program.rows[this.#row[process]!]!;
      this.#servedAt[process] = this.now;
      const takers = this.program.takers[place]!;
      this.#turn[place] = (takers.indexOf(process) + 1) % takers.length;
      this.#take(process, step);
      if (!this.#start(process, step)) this.#enter(process, this.#finish(process));
      if (this.standstill) return;
    }
    if (waiters.length > 0) this.#showWaiting(place);
  }

  /** The waiter that the place's rule names, among those that could start or among all; -1 where there is none. */
  #foremost(place: number, onlyReady: boolean): number {
    const rule = this.program.table.places[place]!.rule ?? "first-come";
    const waiters = this.#waiters[place]!;
    const rows = this.program.rows;
    if (rule === "rotation") {
      const process = this.#inTurn(place);
      const ready = waiters.includes(process) && (!onlyReady || this.#isReady(process, rows[this.#row[process]!]!));
      return ready ? process : -1;
    }
    const key = rule === "priority" ? this.#priority : rule === "longest-since-served" ? this.#servedAt : this.#askedAt;
    let best = -1;
    for (let i = 0; i < waiters.length; i++) {
      const process = waiters[i]!;
      if (best !== -1 && (key[process]! > key[best]! || (key[process]! === key[best]! && process > best))) continue;
      if (!onlyReady || this.#isReady(process, rows[this.#row[process]!]!)) best = process;
    }
    return best;
  }

  /** The next taker in rotation that is not stopped. */
  #inTurn(place: number): number {
    const takers = this.program.takers[place]!;
    for (let i = 0; i < takers.length; i++) {
      const process = takers[(this.#turn[place]! + i) % takers.length]!;
      if (this.#stopCount[this.program.ownResource[process]!] === 0) return process;
    }
    return -1;
  }

  // States

  /** Every waiter shows the state of its first unmet need. */
  #showWaiting(place: number): void {
    const waiters = this.#waiters[place]!;
    const foremost = this.#foremost(place, false);
    for (let i = 0; i < waiters.length; i++) {
      const process = waiters[i]!;
      const needs = this.program.rows[this.#row[process]!]!.needs;
      let state = -1;
      for (let n = 0; n < needs.length; n++) {
        const need = needs[n]!;
        const isMet = this.#isMet(process, need);
        if (isMet && (n > 0 || process === foremost)) continue;
        state = isMet ? need.othersTurn : need.meanwhile;
        break;
      }
      const resource = this.program.ownResource[process]!;
      if (state !== -1 && (this.#under[resource] !== state || this.#physics[resource])) {
        this.#show(resource, state, false);
        this.#options.log?.add(this.now, resource, state, this.#row[process]!, this.#cycle[process]!, -1, -1, 0);
      }
    }
  }

  #show(resource: number, state: number, isPhysics: boolean): void {
    this.#under[resource] = state;
    this.#physics[resource] = isPhysics ? 1 : 0;
    this.#display(resource);
  }

  /** A stop shows over everything but physics. */
  #display(resource: number): void {
    const isStopped = this.#stopCount[resource]! > 0 && !this.#physics[resource];
    const state = isStopped ? this.program.stoppedState[resource]! : this.#under[resource]!;
    const before = this.#state[resource]!;
    if (state === before) return;
    this.stateTicks[before]! += this.now - this.#since[resource]!;
    this.#since[resource] = this.now;
    this.#state[resource] = state;
    if (this.program.isWorking[state] !== this.program.isWorking[before]) this.#turnClocks(resource, this.program.isWorking[state] === 1);
  }

  #logStart(log: EventLog, process: number, resource: number): void {
    const head = this.#options.flow ? -1 : this.#head[process]!;
    const boundBy = head === -1 ? -1 : this.chain.activityOf(head);
    const boundTime = head === -1 ? 0 : this.chain.startOf(head);
    log.add(this.now, resource, this.#state[resource]!, this.#row[process]!, this.#cycle[process]!, this.#hand[process]!, boundBy, boundTime);
  }

  // Stops

  #stop(resource: number, rule: number): void {
    this.#stopCount[resource]!++;
    for (let process = 0; process < this.#phase.length; process++) {
      if (this.#phase[process] !== TIMED || !this.#occupies(process, resource)) continue;
      const effect = this.program.rows[this.#row[process]!]!.stopEffect[rule]!;
      if (effect === RUNS_ON) continue;
      this.#remaining[process] = this.#events.due[process]! - this.now;
      this.#pausedAt[process] = this.now;
      this.#events.clear(process);
      if (effect === HOLDS) this.#phase[process] = HELD;
      else this.#leave(process, effect);
    }
    this.#display(resource);
  }

  #release(resource: number): void {
    if (--this.#stopCount[resource]! > 0) return;
    this.#lastReleased = resource;
    this.#display(resource);
    for (let process = 0; process < this.#phase.length; process++) {
      if (this.#phase[process] === HELD && this.#isFree(process)) this.#resume(process, resource);
    }
    for (const process of this.#gated.filter((each) => this.#isReady(each, this.program.rows[this.#row[each]!]!))) {
      this.#gated.splice(this.#gated.indexOf(process), 1);
      this.#phase[process] = IDLE;
      const step = this.program.rows[this.#row[process]!]!;
      if (!this.#start(process, step)) this.#enter(process, this.#finish(process));
    }
    this.#waiters.forEach((waiters, place) => waiters.length > 0 && this.#touch(place));
  }

  /** The held step goes on; the stop is a segment of its own between its two parts. */
  #resume(process: number, resource: number): void {
    const activity = this.program.rows[this.#row[process]!]!.activity;
    const stop = this.chain.add(this.program.stoppedActivity[resource]!, this.#pausedAt[process]!, this.#head[process]!, false);
    this.#head[process] = this.chain.add(activity, this.now, stop, false);
    this.#phase[process] = TIMED;
    this.#events.set(process, this.now + this.#remaining[process]!);
  }

  #leave(process: number, row: number): void {
    const lead = this.program.rows[this.#row[process]!]!.needs[0];
    if (this.#phase[process] === NEEDING && lead) {
      const waiters = this.#waiters[lead.place + this.#register(process, lead.by)]!;
      waiters.splice(waiters.indexOf(process), 1);
    }
    this.#phase[process] = IDLE;
    this.#headTime[process] = this.now;
    this.#enter(process, row);
  }

  #occupies(process: number, resource: number): boolean {
    const step = this.program.rows[this.#row[process]!]!;
    return this.program.ownResource[process] === resource || step.shows.some((show) => show.resource + this.#register(process, show.by) === resource);
  }

  #isFree(process: number): boolean {
    const gates = this.program.rows[this.#row[process]!]!.gates;
    return gates.every((resource) => this.#stopCount[resource] === 0);
  }

  /** A resource that was in physics and whose next motion is held back now shows its stop. */
  #showHeldBack(step: Row): void {
    for (const resource of step.gates) {
      this.#physics[resource] = 0;
      this.#display(resource);
    }
  }

  /** Clocks on working time stand still while their resource does not work. */
  #turnClocks(resource: number, works: boolean): void {
    for (const process of this.program.clocked[resource]!) {
      if (this.program.rows[this.#row[process]!]!.draw?.clock !== resource) continue;
      if (works && this.#phase[process] === STILL) {
        this.#phase[process] = TIMED;
        this.#events.set(process, this.now + this.#remaining[process]!);
      } else if (!works && this.#phase[process] === TIMED) {
        this.#remaining[process] = this.#events.due[process]! - this.now;
        this.#events.clear(process);
        this.#phase[process] = STILL;
      }
    }
  }

  // Keeping the chain short, and standing still

  #liveNodes(): number[] {
    return [...this.#head, ...this.#tokens.nodes()];
  }

  #renumber(numbers: Int32Array): void {
    for (let process = 0; process < this.#head.length; process++) {
      if (this.#head[process] !== -1) this.#head[process] = numbers[this.#head[process]!]!;
    }
    this.#tokens.renumber(numbers);
  }

  #stuck(kind: Standstill["kind"]): void {
    const waiting = Array.from(this.#phase.keys()).filter((process) => kind === "zero-time loop" || this.#phase[process] === NEEDING);
    this.standstill = {
      kind,
      tick: this.now,
      waiting: waiting.map((process) => {
        const step = this.program.rows[this.#row[process]!]!;
        const lacking = step.needs.find((need) => !this.#isMet(process, need));
        const place = lacking && this.program.table.places[lacking.place + this.#register(process, lacking.by)];
        return { process: this.program.table.processes[process]!.name, step: step.name, lacks: place?.name ?? "" };
      }),
    };
    invariant(kind === "zero-time loop" || waiting.length > 0, "a system without processes cannot run", {});
  }
}
