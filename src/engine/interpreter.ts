// Carries out the code of a program, one process at a time: what a step needs, shows, takes, gives and counts.
import { BindingChain } from "./bindingChain.ts";
import { EventList } from "./eventList.ts";
import type { EventLog } from "./eventLog.ts";
import { FIXED as FIXED_TICKS, LAW_SIZE, meanLaws } from "./lawTable.ts";
import { Memory, placeOf } from "./memory.ts";
import { IDLE, NEEDING, ProcessStates, STILL, TIMED } from "./processStates.ts";
import { OWN_RANK, type Program } from "./program.ts";
import { ResourceStates } from "./resourceStates.ts";
import { CARGO, NO_REGISTER, type Draw, type Give, type Row, type Scale, type Show } from "./row.ts";
import { describeStandstill, type Standstill } from "./standstill.ts";
import {
  GIVE_CHOSEN,
  GIVE_UP,
  PASS,
  PATIENCE_ENDS,
  RELEASE,
  REST,
  SHOW_CHOSEN,
  STEP,
  STOP,
  TAKE_ALL,
  UNBIND,
  WEIGH,
} from "./stepCode.ts";
import { Stops } from "./stops.ts";
import { LAST, MULTIPLIER, openStreams, STREAM_SIZE, UNIT } from "./stream.ts";
import { Tally } from "./tally.ts";
import { TokenQueues } from "./tokenQueues.ts";
import { WaitingLines } from "./waitingLines.ts";
import type * as lawNumbers from "./lawTable.ts";
import type * as phases from "./processStates.ts";
import type * as programs from "./program.ts";
import type * as tables from "./quantileTable.ts";
import type * as rows from "./row.ts";
import type * as operations from "./stepCode.ts";
import type * as streams from "./stream.ts";

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

export class Interpreter {
  /** The present tick, in an array: a call hands whole numbers over for nothing, but puts a tick on the heap. */
  readonly clock: Float64Array;
  readonly processes: ProcessStates;
  readonly resources: ResourceStates;
  readonly lines: WaitingLines;
  readonly stops: Stops;
  readonly events: EventList;
  readonly tokens: TokenQueues;
  readonly chain: BindingChain;
  readonly tally: Tally;
  /** The observation is over: the chain must keep every node, since it is still cut at the end of the observation. */
  keepsChain = false;
  standstill: Standstill | undefined;
  private readonly program: Program;
  private readonly rows: readonly Row[];
  private readonly streams: Float64Array;
  private readonly memory: Memory;
  private readonly laws: Float64Array;
  private readonly atMeans: boolean;
  private readonly log: EventLog | undefined;
  private readonly flow: FlowRecorder | undefined;
  private flowNodes = 0;
  /** Ticks drawn outside the body of a table. */
  private readonly drawn = new Float64Array(1);
  /** Steps reached in the present instant. */
  private hops = 0;

  constructor(program: Program, options: SimulationOptions, marked: readonly string[]) {
    const memory = roomFor(program);
    const clock = memory.takeReals([0]);
    this.program = program;
    this.memory = memory;
    this.clock = clock;
    this.rows = program.rows;
    this.streams = memory.takeReals(openStreams(options.seed, options.replication, program.streams));
    this.atMeans = options.atMeans ?? false;
    this.laws = this.atMeans ? meanLaws(program.laws) : program.laws.numbers;
    this.log = options.log;
    this.flow = options.flow;
    this.events = new EventList(program.ownResource.length, memory.takeReals(program.ownResource));
    this.tokens = new TokenQueues(program.takers.length, clock);
    this.chain = new BindingChain(program.activities.length, options.foldAt);
    this.tally = new Tally(program, clock, marked);
    this.processes = new ProcessStates(program, memory);
    this.resources = new ResourceStates(program, memory, clock, options.isActive, options.classOf);
    this.lines = new WaitingLines(program, clock, this.processes, this.resources, this.tokens);
    const { processes, resources, lines, events, chain, log } = this;
    const enter = (process: number, row: number): void => this.reach(process, row);
    const begin = (process: number): void => this.begin(process);
    this.stops = new Stops({ program, clock, processes, resources, lines, events, chain, log, enter, begin });
  }

  /** A process comes to a step. */
  reach(process: number, row: number): void {
    this.follow(process, this.program.steps.reachedAt[row]!, 0);
  }

  /** Runs every instant up to and including `tick`, or until nothing can happen any more. */
  runUntil(tick: number): void {
    while (this.standstill === undefined && this.follow(-1, REST, tick)) this.foldChain();
    this.clock[0] = tick;
  }

  /** Begins the step for which the process has all that it needs. */
  private begin(process: number): void {
    this.events.clear(process);
    this.follow(process, this.program.steps.startsAt[this.processes.row[process]!]!, 0);
  }

  /**
   * Follows the code of one process until it rests, and then, unless only that process was asked for, that of the next one
   * whose time is up. One long function, since all that steps usually do is done here without a call, on arrays that are
   * looked up once; a process that is not asked for is -1. What is rarer has a method of its own below.
   *
   * Returns true where the chain is full and there is more to do. To return now and then is worth the half of the time:
   * a loop that never ended would be compiled while it runs, and then knows little of its own numbers.
   */
  private follow(asked: number, from: number, untilTick: number): boolean {
    // What other files call by these names, once more: the loop then compares with numbers and looks nothing up.
    // The types say that they are the same numbers.
    // oxlint-disable no-shadow -- these are the same things
    const REST: typeof operations.REST = 0;
    const STEP: typeof operations.STEP = 1;
    const START: typeof operations.START = 2;
    const SHOWS_AT: typeof operations.SHOWS_AT = 7;
    const GIVE: typeof operations.GIVE = 3;
    const COUNT: typeof operations.COUNT = 4;
    const NEXT: typeof operations.NEXT = 5;
    const NEED: typeof operations.NEED = 6;
    const TAKE: typeof operations.TAKE = 14;
    const OWN_RANK: typeof programs.OWN_RANK = 3;
    const NO_REGISTER: typeof rows.NO_REGISTER = 0;
    const CARGO: typeof rows.CARGO = 1;
    const PATIENCE_ENDS: typeof operations.PATIENCE_ENDS = 1;
    const IDLE: typeof phases.IDLE = 0;
    const TIMED: typeof phases.TIMED = 2;
    const FIXED: typeof lawNumbers.FIXED = 0;
    const TABLE: typeof lawNumbers.TABLE = 1;
    const LOCATION: typeof lawNumbers.LOCATION = 2;
    const SCALE: typeof lawNumbers.SCALE = 3;
    const LEAST: typeof lawNumbers.LEAST = 4;
    const MASS: typeof lawNumbers.MASS = 5;
    const CELLS: typeof tables.CELLS = 1024;
    const TAIL = 0.03125;
    const MULTIPLIER: typeof streams.MULTIPLIER = 2091639;
    const UNIT: typeof streams.UNIT = 2.3283064365386963e-10;
    // oxlint-enable no-shadow
    /** Steps within one instant after which time is taken to stand still for ever. */
    const hopsAnInstant = 100_000;
    const { clock, events, lines, stops, tokens, chain, tally, log, flow, drawn, resources, laws } = this;
    const { scans } = events;
    const { code, startsAt } = this.program.steps;
    const { wholes, reals } = this.memory;
    const { count, phase, row, cargo, cycle, resumesAt, head, headTime, tied, hand } = this.processes;
    // Where in the memory each fact of processes, resources and states begins.
    const dueAt = placeOf(events.due);
    const headTimeAt = placeOf(headTime);
    const phaseAt = placeOf(phase);
    const rowAt = placeOf(row);
    const cargoAt = placeOf(cargo);
    const cycleAt = placeOf(cycle);
    const resumeAt = placeOf(resumesAt);
    const headAt = placeOf(head);
    const tiedAt = placeOf(tied);
    const shownAt = placeOf(resources.now);
    const meantAt = placeOf(resources.meant);
    const stopCountAt = placeOf(resources.stopCount);
    const meaningAt = placeOf(resources.meaning);
    const sinceAt = placeOf(resources.since);
    const stateTicksAt = placeOf(resources.ticks);
    const streamsAt = placeOf(this.streams);
    // Whole numbers that come from a call or an argument are said to be whole, or the loop would unpack them at every use.
    let process = asked | 0;
    let at = from | 0;
    let now = clock[0]!;
    // While a step takes its tokens: the rank of the completion that binds it so far, and what bound the process before.
    let rank = 0;
    let own = -1;
    for (;;) {
      if (at === REST) {
        if (asked !== -1 || this.standstill !== undefined) return false;
        process = -1;
        let tick = Infinity;
        if (scans) {
          for (let other = 0; other < count; other++) {
            const otherTick = reals[dueAt + other]!;
            if (otherTick >= tick) continue;
            tick = otherTick;
            process = other;
          }
        } else {
          process = events.first() | 0;
          if (process !== -1) tick = reals[dueAt + process]!;
        }
        // Whatever completes at an instant does so before anybody is served at it.
        if (tick > now) {
          if (lines.touchedPlaces > 0) {
            process = this.serveNext() | 0;
            if (process !== -1) at = startsAt[wholes[rowAt + process]!]!;
            continue;
          }
          if (process === -1) this.stuck("deadlock");
          if (tick > untilTick) return false;
          if (chain.isFull && !this.keepsChain) return true;
          clock[0] = tick;
          now = tick;
          this.hops = 0;
        }
        at = wholes[resumeAt + process]!;
        if (at !== PATIENCE_ENDS) {
          reals[headTimeAt + process] = now;
          wholes[phaseAt + process] = IDLE;
          if (stops.inForce > 0) stops.completed(process);
        }
      }
      let operation = code[at]!;
      if (operation === STEP) {
        if (++this.hops > hopsAnInstant) {
          this.stuck("zero-time loop");
          at = REST;
          continue;
        }
        wholes[rowAt + process] = code[at + 1]!;
        at += 2;
        operation = code[at]!;
      }
      if (operation === START) {
        const end = code[at + 6]!;
        for (let show = at + SHOWS_AT; show < end; show += 2) {
          const resource = code[show]!;
          const state = code[show + 1]!;
          const before = wholes[shownAt + resource]!;
          if (wholes[stopCountAt + resource] !== 0) {
            resources.show(resource, state, this.rows[wholes[rowAt + process]!]!.isPhysics);
          } else {
            wholes[meantAt + resource] = state;
            if (before !== state) {
              reals[stateTicksAt + before]! += now - reals[sinceAt + resource]!;
              reals[sinceAt + resource] = now;
              wholes[shownAt + resource] = state;
              if (wholes[meaningAt + state] !== wholes[meaningAt + before]) resources.turn(resource, state, before);
            }
          }
          if (log) this.logStart(log, process, resource);
        }
        const firstLaw = code[at + 1]!;
        if (firstLaw === -1) {
          at = end;
          continue;
        }
        const law = firstLaw + code[at + 2]! * wholes[cargoAt + process]!;
        let ticks = laws[law + FIXED]!;
        if (ticks < 0 && code[at + 3] === -1) {
          this.drawAside(process);
          ticks = drawn[0]!;
        } else if (ticks < 0) {
          const stream = streamsAt + code[at + 3]!;
          const t = MULTIPLIER * reals[stream]! + reals[stream + 3]! * UNIT;
          const carry = t | 0;
          const u = t - carry;
          reals[stream] = reals[stream + 1]!;
          reals[stream + 1] = reals[stream + 2]!;
          reals[stream + 2] = u;
          reals[stream + 3] = carry;
          const table = laws[law + TABLE]! | 0;
          // The body of the table in one piece: fifteen draws of sixteen end here.
          if (u >= TAIL && u < 1 - TAIL && table >= 0) {
            const cell = (u * CELLS) | 0;
            const low = laws[table + cell]!;
            const high = laws[table + cell + 1]!;
            let value = laws[law + LOCATION]! + laws[law + SCALE]! * (low + (high - low) * (u * CELLS - cell));
            if (value < laws[law + LEAST]!) value = laws[law + LEAST]!;
            const mass = laws[law + MASS]!;
            if (mass > 0) value = mass / value;
            ticks = Math.floor(value + 0.5);
          } else {
            // By way of an array: what a call returns would make every draw a number on the heap.
            this.drawEnd(law, u);
            ticks = drawn[0]!;
          }
        }
        if (flow) this.passNode(flow, process, ticks);
        else if (code[at + 4] !== -1) {
          if (stops.lastChanged !== -1 && reals[headTimeAt + process]! < now) this.linkStop(process);
          wholes[headAt + process] = chain.add(
            code[at + 4]!,
            now,
            wholes[headAt + process]!,
            wholes[tiedAt + process]!,
          );
          wholes[tiedAt + process] = 0;
        }
        wholes[resumeAt + process] = end;
        if (code[at + 5] === -1) {
          wholes[phaseAt + process] = TIMED;
          reals[dueAt + process] = now + ticks;
          if (!scans) events.moved(process);
        } else this.startClock(process, code[at + 5]!, ticks);
        at = REST;
      } else if (operation === GIVE) {
        const place = code[at + 1]!;
        tokens.put(place, wholes[headAt + process]!, wholes[cargoAt + process]!);
        lines.changed(place);
        at += 2;
      } else if (operation === COUNT) {
        tally.count(code[at + 1]!, code[at + 2]!);
        at += 3;
      } else if (operation === NEXT) {
        wholes[cycleAt + process]! += code[at + 2]!;
        at = code[at + 1]!;
      } else if (operation === TAKE) {
        const place = code[at + 1]!;
        if (code[at + 4] === 1) {
          rank = OWN_RANK;
          own = wholes[headAt + process]!;
          wholes[tiedAt + process] = 0;
          wholes[phaseAt + process] = IDLE;
        }
        const slot = tokens.take(place);
        const given = tokens.times[slot]!;
        const latest = reals[headTimeAt + process]!;
        if (flow) flow.needed(this.flowNodes, tokens.nodes[slot]!);
        if (given >= latest) {
          const isLater = given > latest;
          wholes[tiedAt + process] = isLater ? 0 : 1;
          if (isLater || code[at + 2]! < rank) {
            reals[headTimeAt + process] = given;
            wholes[headAt + process] = tokens.nodes[slot]!;
            rank = code[at + 2]!;
          }
        }
        const register = code[at + 3]!;
        if (register === CARGO) wholes[cargoAt + process] = tokens.cargoes[slot]!;
        else if (register !== NO_REGISTER) hand[process] = tokens.cargoes[slot]!;
        lines.changed(place);
        if (code[at + 5] === 1) {
          if (flow) flow.needed(this.flowNodes, own);
          // Where nothing has completed yet, as at the very beginning, nothing is tied.
          if (wholes[headAt + process] === -1) wholes[tiedAt + process] = 0;
        }
        at += 6;
      } else if (operation === NEED) {
        at = this.maySelfServe(process) ? at + 1 : REST;
      } else {
        at = this.stepAside(process, at) | 0;
      }
    }
  }

  /** What few tables ask for; returns where the process goes on. */
  private stepAside(process: number, at: number): number {
    const { code, reachedAt } = this.program.steps;
    const number = code[at + 1]!;
    const step = this.rows[this.processes.row[process]!]!;
    switch (code[at]!) {
      // A step of which nothing is to be told leads straight to the next one.
      case STEP:
        return at;
      case GIVE_UP:
        this.losePatience(process);
        return REST;
      case TAKE_ALL:
        this.take(process, step);
        return at + 1;
      case UNBIND:
        this.processes.headTime[process] = -1;
        return at + 1;
      case WEIGH: {
        const next = this.weigh(process, step.scale!);
        return next === -1 ? at + 1 : reachedAt[next]!;
      }
      case PASS:
        if (this.flow) this.passNode(this.flow, process, 0);
        return at + 1;
      case SHOW_CHOSEN:
        this.showChosen(process, step.shows[number]!, step.isPhysics);
        return at + 2;
      case GIVE_CHOSEN:
        this.giveChosen(process, step.gives[number]!);
        return at + 2;
      case STOP:
        this.stops.stop(step.stops, step.stopsRule);
        return at + 1;
      case RELEASE:
        this.stops.release(number);
        return at + 2;
      default: {
        if (this.uniform(step.chanceStream * STREAM_SIZE) >= step.chance) return at + 1;
        return reachedAt[step.chanceNext]!;
      }
    }
  }

  // Drawing

  private uniform(stream: number): number {
    const { streams } = this;
    const t = MULTIPLIER * streams[stream]! + streams[stream + 3]! * UNIT;
    const carry = t | 0;
    streams[stream] = streams[stream + 1]!;
    streams[stream + 1] = streams[stream + 2]!;
    streams[stream + 3] = carry;
    return (streams[stream + 2] = t - carry);
  }

  private drawEnd(law: number, u: number): void {
    this.drawn[0] = this.program.laws.samplers[law / LAW_SIZE]!.ticks(u);
  }

  /** The time of a step that takes no next number of its stream. */
  private drawAside(process: number): void {
    this.drawn[0] = this.drawTicks(process, this.rows[this.processes.row[process]!]!.draw!);
  }

  private drawTicks(process: number, { samplers, firstLaw, stream, again, until }: Draw): number {
    if (until !== -1) return Math.max(0, until - this.clock[0]!);
    const law = samplers.length === 1 ? firstLaw : firstLaw + this.processes.cargo[process]!;
    const fixed = this.laws[law * LAW_SIZE + FIXED_TICKS]!;
    if (fixed >= 0) return fixed;
    const place = stream * STREAM_SIZE;
    return this.program.laws.samplers[law]!.ticks(again ? this.streams[place + LAST]! : this.uniform(place));
  }

  /** Returns the row to leave for, -1 where the number is kept or within its limits. */
  private weigh(process: number, scale: Scale): number {
    const { sampler, stream, keeps, alone, low, high, belowNext, aboveNext } = scale;
    const { kept } = this.processes;
    const drawn = this.atMeans
      ? sampler.meanTicks
      : sampler.ticks(sampler.isFixed ? 0 : this.uniform(stream * STREAM_SIZE));
    if (keeps) {
      kept[process] = drawn;
      return -1;
    }
    const sum = alone ? drawn : kept[process]! + drawn;
    return sum < low ? belowNext : sum > high ? aboveNext : -1;
  }

  // Waiting and taking

  /** Serves whoever is next at a place where something has changed, -1 where nobody is: those who wait on then show what for. */
  private serveNext(): number {
    const place = this.lines.nextChanged();
    const process = this.lines.serve(place);
    if (process === -1) {
      this.showWaiting(place);
      return -1;
    }
    if (this.rows[this.processes.row[process]!]!.patience) this.events.clear(process);
    return process;
  }

  /** True where nobody else may want what the process needs, and all is there; otherwise it stands in line. */
  private maySelfServe(process: number): boolean {
    const step = this.rows[this.processes.row[process]!]!;
    if (!step.takesAlone || !this.lines.isReady(process, step)) {
      this.wait(process, step);
      return false;
    }
    // Its code takes what it needs; where that is only the end of a stop there is nothing to take.
    if (step.needs.length === 0) this.take(process, step);
    return true;
  }

  private wait(process: number, step: Row): void {
    const { phase, askedAt, resumesAt, priority } = this.processes;
    const now = this.clock[0]!;
    phase[process] = NEEDING;
    askedAt[process] = now;
    priority[process] = step.priority;
    resumesAt[process] = PATIENCE_ENDS;
    if (step.patience) this.events.set(process, now + this.drawTicks(process, step.patience));
    else this.events.clear(process);
    const lead = step.needs[0];
    if (lead) this.lines.join(lead.place + this.processes.register(process, lead.by), process, !step.waitsUnseen);
    else this.stops.holdBack(process);
  }

  /** The wait was a step of its own: it binds what follows. */
  private losePatience(process: number): void {
    const { phase, row, head, headTime, askedAt } = this.processes;
    const step = this.rows[row[process]!]!;
    this.stops.leaveLine(process);
    if (!this.flow) head[process] = this.chain.add(step.patienceActivity, askedAt[process]!, head[process]!, 0);
    phase[process] = IDLE;
    headTime[process] = this.clock[0]!;
    this.reach(process, step.patienceNext);
  }

  /** Takes all needs; the latest of their completions and of the process's own last step binds what follows. */
  private take(process: number, step: Row): void {
    const { tokens, flow } = this;
    const { head, headTime, cargo, hand } = this.processes;
    const { needs } = step;
    let latest = headTime[process]!;
    let node = head[process]!;
    let rank = OWN_RANK;
    let tied = 0;
    for (let i = 0; i < needs.length; i++) {
      const need = needs[i]!;
      const place = need.place + this.processes.register(process, need.by);
      const placeRank = this.program.rank[place]!;
      let number = 0;
      for (let n = 0; n < need.count; n++) {
        const slot = tokens.take(place);
        const time = tokens.times[slot]!;
        number = tokens.cargoes[slot]!;
        flow?.needed(this.flowNodes, tokens.nodes[slot]!);
        if (time < latest) continue;
        const isLater = time > latest;
        tied = isLater ? 0 : 1;
        if (!isLater && placeRank >= rank) continue;
        latest = time;
        node = tokens.nodes[slot]!;
        rank = placeRank;
      }
      if (need.takes === CARGO) cargo[process] = number;
      else if (need.takes !== NO_REGISTER) hand[process] = number;
      this.lines.changed(place);
    }
    flow?.needed(this.flowNodes, head[process]!);
    head[process] = node;
    headTime[process] = latest;
    // Where nothing has completed yet, as at the very beginning, nothing is tied.
    this.processes.tied[process] = node === -1 ? 0 : tied;
    this.processes.phase[process] = IDLE;
  }

  private giveChosen(process: number, give: Give): void {
    const { cargo, hand, head } = this.processes;
    const place = give.place + this.processes.register(process, give.by);
    const number = give.carries === CARGO ? cargo[process]! : hand[process]!;
    for (let n = 0; n < give.count; n++) this.tokens.put(place, head[process]!, number);
    this.lines.changed(place);
  }

  // What bound a step, and its time

  /** What lies between a step's latest completion and its start can only be a stop. */
  private linkStop(process: number): void {
    const { head, headTime, row } = this.processes;
    // What comes after a timetable alone has nothing before it that the stop could have interrupted.
    if (headTime[process]! < 0) return;
    const activity = this.program.stoppedActivity[this.stops.endedFor(this.rows[row[process]!]!)]!;
    head[process] = this.chain.add(activity, headTime[process]!, head[process]!, 0);
  }

  /** In a flow record every step that takes something is a node of its own, timed or not. */
  private passNode(flow: FlowRecorder, process: number, ticks: number): void {
    const { row, head } = this.processes;
    const step = this.rows[row[process]!]!;
    const node = this.flowNodes++;
    if (step.needs.length === 0 && step.gates.length === 0) flow.needed(node, head[process]!);
    flow.started(node, row[process]!, this.clock[0]!, ticks);
    head[process] = node;
  }

  /** The time passes only while the resource works. */
  private startClock(process: number, resource: number, ticks: number): void {
    const { phase, remaining } = this.processes;
    const isWorking = this.program.isWorking[this.resources.now[resource]!] === 1;
    phase[process] = isWorking ? TIMED : STILL;
    if (isWorking) return this.events.set(process, this.clock[0]! + ticks);
    remaining[process] = ticks;
    this.events.clear(process);
  }

  // Showing

  private showWaiting(place: number): void {
    const waiters = this.lines.waiters[place]!;
    const { row, cycle } = this.processes;
    for (let i = 0; i < this.lines.lengths[place]!; i++) {
      const process = waiters[i]!;
      const state = this.lines.waitingState(place, process);
      const resource = this.program.ownResource[process]!;
      if (state === -1 || !this.resources.differs(resource, state)) continue;
      this.resources.show(resource, state, false);
      const shown = this.resources.now[resource]!;
      this.log?.add(this.clock[0]!, resource, shown, row[process]!, cycle[process]!, -1, -1, 0);
    }
  }

  private showChosen(process: number, { resource: first, by, states }: Show, isPhysics: boolean): void {
    const { firstState } = this.program;
    const state = states.length === 1 ? states[0]! : states[this.processes.cargo[process]!]!;
    const resource = by === NO_REGISTER ? first : first + this.processes.register(process, by);
    // Those of one family have the same states in the same order.
    this.resources.show(resource, state + firstState[resource]! - firstState[first]!, isPhysics);
    if (this.log) this.logStart(this.log, process, resource);
  }

  private logStart(log: EventLog, process: number, resource: number): void {
    const { head, row, cycle, hand } = this.processes;
    const bound = this.flow ? -1 : head[process]!;
    const boundBy = bound === -1 ? -1 : this.chain.activityOf(bound);
    const boundTime = bound === -1 ? 0 : this.chain.startOf(bound);
    const shown = this.resources.now[resource]!;
    log.add(this.clock[0]!, resource, shown, row[process]!, cycle[process]!, hand[process]!, boundBy, boundTime);
  }

  // Keeping the chain short, and standing still

  /** Lets the chain begin anew now: the end of a warm-up. */
  restartChain(): void {
    this.renumber(this.chain.restart(this.liveNodes(), this.clock[0]!));
  }

  private foldChain(): void {
    this.renumber(this.chain.fold(this.liveNodes()));
  }

  private liveNodes(): number[] {
    return [...this.processes.head, ...this.tokens.liveNodes()];
  }

  private renumber(numbers: Int32Array): void {
    const { head } = this.processes;
    for (let process = 0; process < head.length; process++)
      if (head[process] !== -1) head[process] = numbers[head[process]!]!;
    this.tokens.renumber(numbers);
  }

  private stuck(kind: Standstill["kind"]): void {
    const { program, processes, resources, lines } = this;
    this.standstill = describeStandstill(kind, this.clock[0]!, { program, processes, resources, lines });
  }
}

/** For the clock, streams and event list, what processes and resources keep, and the time in each state. */
function roomFor({ table, streams, states }: Program): Memory {
  const [processes, resources] = [table.processes.length, table.resources.length];
  return new Memory({
    wholes: 8 * processes + 3 * resources + states.length,
    reals: 1 + STREAM_SIZE * streams.length + 8 * processes + resources + states.length,
  });
}
