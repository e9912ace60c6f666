// The simulation: runs the rows of a program against the clock, one instant after another, and keeps what is asked of it.
import type { LongestActive } from "./activePeriods.ts";
import { BindingChain, type ChainTotals } from "./bindingChain.ts";
import { DrawnAhead } from "./drawnAhead.ts";
import { EventList } from "./eventList.ts";
import type { EventLog } from "./eventLog.ts";
import { IDLE, NEEDING, ProcessStates, STILL, TIMED } from "./processStates.ts";
import { OWN_RANK, type Program } from "./program.ts";
import { ResourceStates } from "./resourceStates.ts";
import { CARGO, NO_REGISTER, type Draw, type Give, type Row, type Scale } from "./row.ts";
import { describeStandstill, type Standstill } from "./standstill.ts";
import { Stops } from "./stops.ts";
import { openStream } from "./stream.ts";
import { TokenQueues } from "./tokenQueues.ts";
import { WaitingLines } from "./waitingLines.ts";

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
  /** By state: 1 where a resource counts as at work when its active periods are told; the working states if not given. */
  readonly isActive?: Uint8Array;
  /** Class of each state, for the time that all resources together spend; all in one where absent. */
  readonly classOf?: Uint8Array;
  /** Nodes of the chain after which it is folded: what it holds does not depend on it. */
  readonly foldAt?: number;
}

/** Told of every step that starts and of every completion that it needed; for the event graph. */
export interface FlowRecorder {
  started(node: number, row: number, tick: number, ticks: number): void;
  needed(node: number, before: number): void;
}

export class Simulation {
  readonly program: Program;
  now = 0;
  standstill: Standstill | undefined;
  /** Each counter since the observation began. */
  readonly counts: Float64Array;
  /** Tick at which each counter first and last rose since then, -1 where it did not. */
  readonly firstRise: Float64Array;
  readonly lastRise: Float64Array;
  readonly chain: BindingChain;
  /** Ticks at which a marked counter was raised, and which one. */
  readonly marks: { ticks: number[]; counters: number[] } = { ticks: [], counters: [] };

  readonly #rows: readonly Row[];
  readonly #processes: ProcessStates;
  readonly #resources: ResourceStates;
  readonly #lines: WaitingLines;
  readonly #stops: Stops;
  readonly #events: EventList;
  readonly #tokens: TokenQueues;
  readonly #streams: readonly DrawnAhead[];
  readonly #atMeans: boolean;
  readonly #log: EventLog | undefined;
  readonly #flow: FlowRecorder | undefined;
  readonly #marked: Uint8Array;
  #hops = 0;
  #flowNodes = 0;
  /** The observation is over: the chain must keep every node, since it is still cut at the end of the observation. */
  #runsOn = false;

  constructor(program: Program, options: SimulationOptions, marked: readonly string[] = []) {
    this.program = program;
    this.#rows = program.rows;
    this.#atMeans = options.atMeans ?? false;
    this.#log = options.log;
    this.#flow = options.flow;
    this.#events = new EventList(program.ownResource.length);
    this.#tokens = new TokenQueues(program.takers.length);
    this.#streams = this.#atMeans
      ? []
      : program.streams.map(
          ({ resource, step }) => new DrawnAhead(openStream(options.seed, options.replication, resource, step)),
        );
    this.counts = new Float64Array(program.counters.length);
    this.firstRise = new Float64Array(program.counters.length).fill(-1);
    this.lastRise = new Float64Array(program.counters.length).fill(-1);
    this.chain = new BindingChain(program.activities.length, options.foldAt);
    this.#marked = Uint8Array.from(program.counters, (name) => (marked.includes(name) ? 1 : 0));
    this.#processes = new ProcessStates(program);
    this.#resources = new ResourceStates(program, options.isActive, options.classOf);
    this.#lines = new WaitingLines(program, this.#processes, this.#resources, this.#tokens);
    this.#stops = new Stops({
      program,
      processes: this.#processes,
      resources: this.#resources,
      lines: this.#lines,
      events: this.#events,
      chain: this.chain,
      log: options.log,
      enter: (process, row) => this.#enter(process, row),
      begin: (process) => this.#begin(process),
    });
    this.#beginAll();
  }

  /** Ticks in each state since the observation began; up to date after `settle`. */
  get stateTicks(): Float64Array {
    return this.#resources.ticks;
  }

  /** Ticks since the observation began by class: the lowest that any resource is in counts; up to date after `settle`. */
  get jointTicks(): Float64Array {
    return this.#resources.joint.ticks;
  }

  /** By resource: ticks since the observation began in which its active period was the longest of all. */
  longestActive(): readonly LongestActive[] {
    return this.#resources.periods.longest(this.now);
  }

  #beginAll(): void {
    this.program.table.places.forEach((place, number) => {
      for (let i = 0; i < place.tokens; i++)
        this.#tokens.put(number, 0, -1, place.cargo === "numbered" ? i : (place.cargo ?? 0));
    });
    this.program.firstState.forEach((state, resource) => this.#log?.add(0, resource, state, -1, -1, -1, -1, 0));
    this.program.beginsAt.forEach((row, process) => this.#enter(process, row));
  }

  /** Runs every instant up to and including `tick`, or until nothing can happen any more. */
  runUntil(tick: number): void {
    const events = this.#events;
    while (this.standstill === undefined) {
      const process = events.first();
      const due = process === -1 ? Infinity : events.due[process]!;
      // Whatever completes at an instant does so before anybody is served at it.
      if (due > this.now) {
        const place = this.#lines.nextChanged();
        if (place !== -1) {
          this.#serve(place);
          continue;
        }
        if (process === -1) this.#stuck("deadlock");
        if (due > tick) break;
        this.now = due;
        this.#hops = 0;
        if (this.chain.isFull && !this.#runsOn) this.#renumber(this.chain.fold(this.#liveNodes()));
      }
      this.#complete(process);
    }
    this.now = tick;
  }

  /** Forgets what was observed so far; the system goes on as it is. */
  restartObservation(): void {
    this.settle();
    this.stateTicks.fill(0);
    this.counts.fill(0);
    this.firstRise.fill(-1);
    this.lastRise.fill(-1);
    this.marks.ticks.length = 0;
    this.marks.counters.length = 0;
    this.#resources.joint.restart(this.now);
    this.#resources.periods.restart(this.now);
    this.#renumber(this.chain.restart(this.#liveNodes(), this.now));
  }

  /** Books the time since each resource's last change of state. */
  settle(): void {
    this.#resources.settle(this.now);
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
        if (!heads.has(process) && this.#processes.phase[process] !== NEEDING)
          heads.set(process, this.#processes.head[process]!);
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

  // One process

  #complete(process: number): void {
    const { phase, row, headTime } = this.#processes;
    if (phase[process] === NEEDING) return this.#losePatience(process);
    const step = this.#rows[row[process]!]!;
    headTime[process] = step.isClock ? -1 : this.now;
    phase[process] = IDLE;
    if (this.#stops.inForce > 0) this.#stops.completed(process, this.now);
    this.#enter(process, this.#finish(process, step));
  }

  /** The wait was a step of its own: it binds what follows. */
  #losePatience(process: number): void {
    const { phase, row, head, headTime, askedAt } = this.#processes;
    const step = this.#rows[row[process]!]!;
    this.#stops.leaveLine(process);
    if (!this.#flow) head[process] = this.chain.add(step.patienceActivity, askedAt[process]!, head[process]!, false);
    phase[process] = IDLE;
    headTime[process] = this.now;
    this.#enter(process, step.patienceNext);
  }

  /** Goes through steps until one takes time or has to wait. */
  #enter(process: number, row: number): void {
    for (let at = row; ;) {
      if (++this.#hops > hopsAnInstant) return this.#stuck("zero-time loop");
      this.#processes.row[process] = at;
      const step = this.#rows[at]!;
      if (step.needs.length > 0 || step.gates.length > 0) {
        if (!step.takesAlone || !this.#lines.isReady(process, step)) return this.#wait(process, step);
        this.#take(process, step);
      }
      if (this.#start(process, step)) return;
      at = this.#finish(process, step);
    }
  }

  #wait(process: number, step: Row): void {
    this.#processes.phase[process] = NEEDING;
    this.#processes.askedAt[process] = this.now;
    this.#processes.priority[process] = step.priority;
    if (step.patience) this.#events.set(process, this.now + this.#drawTicks(process, step.patience));
    else this.#events.clear(process);
    const lead = step.needs[0];
    if (lead) this.#lines.join(lead.place + this.#processes.register(process, lead.by), process);
    else this.#stops.holdBack(process);
  }

  /** Begins the step for which the process has all that it needs. */
  #begin(process: number): void {
    const step = this.#rows[this.#processes.row[process]!]!;
    this.#events.clear(process);
    if (!this.#start(process, step)) this.#enter(process, this.#finish(process, step));
  }

  /** Returns true where the step takes time. */
  #start(process: number, step: Row): boolean {
    if (step.stops !== -1) this.#stops.stop(step.stops, step.stopsRule, this.now);
    this.#showAll(process, step);
    const { draw } = step;
    if (draw === null) {
      if (this.#flow && step.needs.length > 0) this.#flowNode(this.#flow, process, step, 0);
      return false;
    }
    const ticks = this.#drawTicks(process, draw);
    if (this.#flow) this.#flowNode(this.#flow, process, step, ticks);
    else if (!step.isClock) this.#link(process, step);
    const { phase, remaining } = this.#processes;
    if (draw.clock !== -1 && this.program.isWorking[this.#resources.now[draw.clock]!] === 0) {
      phase[process] = STILL;
      remaining[process] = ticks;
      this.#events.clear(process);
    } else {
      phase[process] = TIMED;
      this.#events.set(process, this.now + ticks);
    }
    return true;
  }

  /** Gives and counts what the step ends with; returns the next row. */
  #finish(process: number, step: Row): number {
    const { gives, counters } = step;
    for (let i = 0; i < gives.length; i++) this.#give(process, gives[i]!);
    for (let i = 0; i < counters.length; i++) this.#count(counters[i]!, step.amounts[i]!);
    if (step.releases !== -1) this.#stops.release(step.releases, this.now);
    if (step.scale) {
      const next = this.#weigh(process, step.scale);
      if (next !== -1) return next;
    }
    if (step.chance > 0 && this.#streams[step.chanceStream]!.next() < step.chance) return step.chanceNext;
    if (step.next <= this.#processes.row[process]!) this.#processes.cycle[process]!++;
    return step.next;
  }

  #give(process: number, give: Give): void {
    const { cargo, hand, head } = this.#processes;
    const place = give.place + this.#processes.register(process, give.by);
    const number = give.carries === CARGO ? cargo[process]! : hand[process]!;
    for (let n = 0; n < give.count; n++) this.#tokens.put(place, this.now, head[process]!, number);
    this.#lines.changed(place);
  }

  #count(counter: number, amount: number): void {
    this.counts[counter]! += amount;
    if (this.firstRise[counter] === -1) this.firstRise[counter] = this.now;
    this.lastRise[counter] = this.now;
    if (this.#marked[counter] === 0) return;
    this.marks.ticks.push(this.now);
    this.marks.counters.push(counter);
  }

  #drawTicks(process: number, draw: Draw): number {
    const { samplers } = draw;
    if (draw.until !== -1) return Math.max(0, draw.until - this.now);
    const sampler = samplers.length === 1 ? samplers[0]! : samplers[this.#processes.cargo[process]!]!;
    if (this.#atMeans) return Math.round(sampler.meanTicks);
    // A step with several laws draws every time, so that the n-th time has the n-th number whichever law it follows.
    return sampler.ticks(draw.isFixed ? 0 : this.#streams[draw.stream]!.next());
  }

  /** Returns the row to leave for, -1 where the number is kept or within its limits. */
  #weigh(process: number, { sampler, stream, keeps, alone, low, high, belowNext, aboveNext }: Scale): number {
    const { kept } = this.#processes;
    const drawn = this.#atMeans
      ? sampler.meanTicks
      : sampler.ticks(sampler.isFixed ? 0 : this.#streams[stream]!.next());
    if (keeps) {
      kept[process] = drawn;
      return -1;
    }
    const sum = alone ? drawn : kept[process]! + drawn;
    return sum < low ? belowNext : sum > high ? aboveNext : -1;
  }

  // Taking and what bound it

  /** Takes all needs; the latest of their completions and of the process's own last step binds what follows. */
  #take(process: number, step: Row): void {
    const tokens = this.#tokens;
    const { head, headTime, cargo, hand } = this.#processes;
    const { needs } = step;
    let latest = headTime[process]!;
    let node = head[process]!;
    let rank = OWN_RANK;
    let tied = 0;
    for (let i = 0; i < needs.length; i++) {
      const need = needs[i]!;
      const place = need.place + this.#processes.register(process, need.by);
      const placeRank = this.program.rank[place]!;
      for (let n = 0; n < need.count; n++) {
        tokens.take(place);
        this.#flow?.needed(this.#flowNodes, tokens.node);
        if (tokens.time < latest) continue;
        const isLater = tokens.time > latest;
        tied = isLater ? 0 : 1;
        if (!isLater && placeRank >= rank) continue;
        latest = tokens.time;
        node = tokens.node;
        rank = placeRank;
      }
      if (need.takes === CARGO) cargo[process] = tokens.cargo;
      else if (need.takes !== NO_REGISTER) hand[process] = tokens.cargo;
      this.#lines.changed(place);
    }
    this.#flow?.needed(this.#flowNodes, head[process]!);
    head[process] = node;
    headTime[process] = latest;
    // Where nothing has completed yet, as at the very beginning, nothing is tied.
    this.#processes.tied[process] = node === -1 ? 0 : tied;
    this.#processes.phase[process] = IDLE;
  }

  /** Adds the step to the chain; what lies between its latest completion and its start can only be a stop. */
  #link(process: number, step: Row): void {
    const { head, headTime, tied } = this.#processes;
    let before = head[process]!;
    const stopped = headTime[process]! < this.now ? this.#stops.endedFor(step, this.now) : -1;
    // What comes after a timetable alone has nothing before it that the stop could have interrupted.
    if (stopped !== -1 && headTime[process]! >= 0) {
      before = this.chain.add(this.program.stoppedActivity[stopped]!, headTime[process]!, before, false);
    }
    head[process] = this.chain.add(step.activity, this.now, before, tied[process] === 1);
    tied[process] = 0;
  }

  /** In a flow record every step that takes something is a node of its own, timed or not. */
  #flowNode(flow: FlowRecorder, process: number, step: Row, ticks: number): void {
    const node = this.#flowNodes++;
    if (step.needs.length === 0 && step.gates.length === 0) flow.needed(node, this.#processes.head[process]!);
    flow.started(node, this.#processes.row[process]!, this.now, ticks);
    this.#processes.head[process] = node;
  }

  // Serving and showing

  /** Serves whoever is next at the place; when nobody is, those who wait on show what for. */
  #serve(place: number): void {
    const process = this.#lines.serve(place, this.now);
    if (process === -1) return this.#showWaiting(place);
    this.#take(process, this.#rows[this.#processes.row[process]!]!);
    this.#begin(process);
    this.#lines.changed(place);
  }

  #showWaiting(place: number): void {
    const waiters = this.#lines.waiters[place]!;
    for (let i = 0; i < this.#lines.lengths[place]!; i++) {
      const process = waiters[i]!;
      const state = this.#lines.waitingState(place, process);
      const resource = this.program.ownResource[process]!;
      if (state === -1 || !this.#resources.differs(resource, state)) continue;
      this.#resources.show(resource, state, false, this.now);
      const shown = this.#resources.now[resource]!;
      this.#log?.add(
        this.now,
        resource,
        shown,
        this.#processes.row[process]!,
        this.#processes.cycle[process]!,
        -1,
        -1,
        0,
      );
    }
  }

  #showAll(process: number, step: Row): void {
    const { plainShows, shows } = step;
    for (let i = 0; i < plainShows.length; i += 2) {
      this.#resources.show(plainShows[i]!, plainShows[i + 1]!, step.isPhysics, this.now);
      if (this.#log) this.#logStart(this.#log, process, plainShows[i]!);
    }
    const { firstState } = this.program;
    for (let i = 0; i < shows.length; i++) {
      const { resource: first, by, states } = shows[i]!;
      const state = states.length === 1 ? states[0]! : states[this.#processes.cargo[process]!]!;
      const resource = by === NO_REGISTER ? first : first + this.#processes.register(process, by);
      // Those of one family have the same states in the same order.
      this.#resources.show(resource, state + firstState[resource]! - firstState[first]!, step.isPhysics, this.now);
      if (this.#log) this.#logStart(this.#log, process, resource);
    }
  }

  #logStart(log: EventLog, process: number, resource: number): void {
    const { head, row, cycle, hand } = this.#processes;
    const bound = this.#flow ? -1 : head[process]!;
    const boundBy = bound === -1 ? -1 : this.chain.activityOf(bound);
    const boundTime = bound === -1 ? 0 : this.chain.startOf(bound);
    log.add(
      this.now,
      resource,
      this.#resources.now[resource]!,
      row[process]!,
      cycle[process]!,
      hand[process]!,
      boundBy,
      boundTime,
    );
  }

  // Keeping the chain short, and standing still

  #liveNodes(): number[] {
    return [...this.#processes.head, ...this.#tokens.nodes()];
  }

  #renumber(numbers: Int32Array): void {
    const { head } = this.#processes;
    for (let process = 0; process < head.length; process++)
      if (head[process] !== -1) head[process] = numbers[head[process]!]!;
    this.#tokens.renumber(numbers);
  }

  #stuck(kind: Standstill["kind"]): void {
    this.standstill = describeStandstill(kind, this.now, {
      program: this.program,
      processes: this.#processes,
      resources: this.#resources,
      lines: this.#lines,
    });
  }
}
