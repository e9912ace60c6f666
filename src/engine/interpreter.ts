// Carries out the code of a program, one process at a time: what a step needs, shows, takes, gives and counts.
import { BindingChain } from "./bindingChain.ts";
import { EventList } from "./eventList.ts";
import type { EventLog } from "./eventLog.ts";
import { LAW_SIZE } from "./lawTable.ts";
import { IDLE, NEEDING, ProcessStates, STILL, TIMED } from "./processStates.ts";
import { OWN_RANK, type Program } from "./program.ts";
import { CELLS } from "./quantileTable.ts";
import { ResourceStates } from "./resourceStates.ts";
import { CARGO, NO_REGISTER, type Draw, type Give, type Row, type Show } from "./row.ts";
import { TAIL } from "./sampler.ts";
import { describeStandstill, type Standstill } from "./standstill.ts";
import {
  COUNT,
  GIVE,
  GIVE_CHOSEN,
  NEED,
  NEXT,
  PASS,
  REACH,
  RELEASE,
  SHOW,
  SHOW_CHOSEN,
  STOP,
  TIME,
} from "./stepCode.ts";
import { Stops } from "./stops.ts";
import { MULTIPLIER, openStreams, STEP, STREAM_SIZE } from "./stream.ts";
import { Tally } from "./tally.ts";
import { TokenQueues } from "./tokenQueues.ts";
import { WaitingLines } from "./waitingLines.ts";

/** Steps within one instant after which time is taken to stand still for ever. */
const hopsAnInstant = 100_000;

export interface SimulationOptions {
  readonly seed: string;
  readonly replication: number;
  /** Every time is the mean of its law: nothing is drawn. */
  readonly atMeans?: boolean;
  readonly log?: EventLog;
  readonly flow?: FlowRecorder;
  /** By state: 1 where a resource counts as at work when its active periods are told; the working states if not given. */
  readonly isActive?: Uint8Array;
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
  readonly clock = new Float64Array(1);
  readonly processes: ProcessStates;
  readonly resources: ResourceStates;
  readonly lines: WaitingLines;
  readonly stops: Stops;
  readonly events: EventList;
  readonly tokens: TokenQueues;
  readonly chain: BindingChain;
  readonly tally: Tally;
  /** Steps reached in the present instant. */
  hops = 0;
  standstill: Standstill | undefined;
  private readonly program: Program;
  private readonly rows: readonly Row[];
  private readonly streams: Float64Array;
  /** Ticks of each law where nothing is drawn, otherwise -1. */
  private readonly fixedTicks: Float64Array;
  private readonly log: EventLog | undefined;
  private readonly flow: FlowRecorder | undefined;
  private flowNodes = 0;
  /** Ticks of the last time drawn. */
  private readonly drawn = new Float64Array(1);

  constructor(program: Program, options: SimulationOptions, marked: readonly string[]) {
    const { clock } = this;
    this.program = program;
    this.rows = program.rows;
    this.streams = openStreams(options.seed, options.replication, options.atMeans ? [] : program.streams);
    this.fixedTicks = options.atMeans
      ? Float64Array.from(program.laws.samplers, (sampler) => Math.round(sampler.meanTicks))
      : program.laws.fixedTicks;
    this.log = options.log;
    this.flow = options.flow;
    this.events = new EventList(program.ownResource.length);
    this.tokens = new TokenQueues(program.takers.length, clock);
    this.chain = new BindingChain(program.activities.length, options.foldAt);
    this.tally = new Tally(program, clock, marked);
    this.processes = new ProcessStates(program);
    this.resources = new ResourceStates(program, clock, options.isActive);
    this.lines = new WaitingLines(program, clock, this.processes, this.resources, this.tokens);
    const { processes, resources, lines, events, chain, log } = this;
    const enter = (process: number, row: number): void => this.reach(process, row);
    const begin = (process: number): void => this.begin(process);
    this.stops = new Stops({ program, clock, processes, resources, lines, events, chain, log, enter, begin });
  }

  /** A process comes to a step. */
  reach(process: number, row: number): void {
    this.follow(process, this.program.steps.reachedAt[row]!);
  }

  /** Its time is up, or its patience is at an end. */
  complete(process: number): void {
    const { phase, row, headTime } = this.processes;
    if (phase[process] === NEEDING) return this.losePatience(process);
    headTime[process] = this.clock[0]!;
    phase[process] = IDLE;
    if (this.stops.inForce > 0) this.stops.completed(process);
    this.follow(process, this.program.steps.endsAt[row[process]!]!);
  }

  /** Serves whoever is next at the place; when nobody is, those who wait on show what for. */
  serve(place: number): void {
    const process = this.lines.serve(place);
    if (process === -1) return this.showWaiting(place);
    this.take(process, this.rows[this.processes.row[process]!]!);
    this.begin(process);
    this.lines.changed(place);
  }

  /** Begins the step for which the process has all that it needs. */
  private begin(process: number): void {
    this.events.clear(process);
    this.follow(process, this.program.steps.startsAt[this.processes.row[process]!]!);
  }

  /**
   * Goes through the code until a step takes time or has to wait. One long function, since everything that a step usually
   * does is done here, on numbers in arrays, without a call; what is rarer has a method of its own below.
   */
  private follow(process: number, from: number): void {
    const { code } = this.program.steps;
    const { processes, resources } = this;
    const { head } = processes;
    for (let at = from; ;) {
      switch (code[at]) {
        case REACH: {
          if (++this.hops > hopsAnInstant) return this.stuck("zero-time loop");
          processes.row[process] = code[at + 1]!;
          at += 2;
          break;
        }
        case NEED: {
          const step = this.rows[processes.row[process]!]!;
          if (!step.takesAlone || !this.lines.isReady(process, step)) return this.wait(process, step);
          this.take(process, step);
          at += 1;
          break;
        }
        case SHOW: {
          const resource = code[at + 1]!;
          const state = code[at + 2]!;
          if (resources.stopCount[resource] === 0) {
            const before = resources.now[resource]!;
            resources.meant[resource] = state;
            if (before !== state) {
              const now = this.clock[0]!;
              resources.ticks[before]! += now - resources.since[resource]!;
              resources.since[resource] = now;
              resources.now[resource] = state;
              if (resources.meaning[state] !== resources.meaning[before]) resources.turn(resource, state, before);
            }
          } else resources.show(resource, state, this.rows[processes.row[process]!]!.isPhysics);
          if (this.log) this.logStart(this.log, process, resource);
          at += 3;
          break;
        }
        case TIME: {
          const law = code[at + 1]! + code[at + 2]! * processes.cargo[process]!;
          const activity = code[at + 4]!;
          this.draw(law, code[at + 3]!);
          if (this.flow) this.passNode(this.flow, process, this.drawn[0]!);
          else {
            const now = this.clock[0]!;
            let before = head[process]!;
            if (processes.headTime[process]! < now && this.stops.lastChanged !== -1)
              before = this.linkStop(process, before);
            head[process] = this.chain.add(activity, now, before, processes.tied[process] === 1);
            processes.tied[process] = 0;
          }
          if (code[at + 5] !== -1) return this.startClock(process, code[at + 5]!);
          processes.phase[process] = TIMED;
          this.events.due[process] = this.clock[0]! + this.drawn[0]!;
          return this.events.moved(process);
        }
        case GIVE: {
          const place = code[at + 1]!;
          this.tokens.put(place, head[process]!, processes.cargo[process]!);
          this.lines.changed(place);
          at += 2;
          break;
        }
        case COUNT: {
          this.tally.count(code[at + 1]!, code[at + 2]!);
          at += 3;
          break;
        }
        case NEXT: {
          processes.cycle[process]! += code[at + 2]!;
          at = code[at + 1]!;
          break;
        }
        case PASS: {
          if (this.flow) this.passNode(this.flow, process, 0);
          at += 1;
          break;
        }
        case SHOW_CHOSEN: {
          const step = this.rows[processes.row[process]!]!;
          this.showChosen(process, step.shows[code[at + 1]!]!, step.isPhysics);
          at += 2;
          break;
        }
        case GIVE_CHOSEN: {
          this.giveChosen(process, this.rows[processes.row[process]!]!.gives[code[at + 1]!]!);
          at += 2;
          break;
        }
        case STOP: {
          const step = this.rows[processes.row[process]!]!;
          this.stops.stop(step.stops, step.stopsRule);
          at += 1;
          break;
        }
        case RELEASE: {
          this.stops.release(code[at + 1]!);
          at += 2;
          break;
        }
        default: {
          const step = this.rows[processes.row[process]!]!;
          const isTaken = this.uniform(step.chanceStream * STREAM_SIZE) < step.chance;
          at = isTaken ? this.program.steps.reachedAt[step.chanceNext]! : at + 1;
        }
      }
    }
  }

  // Drawing

  private uniform(stream: number): number {
    const { streams } = this;
    const t = MULTIPLIER * streams[stream]! + streams[stream + 3]! * STEP;
    const carry = t | 0;
    streams[stream] = streams[stream + 1]!;
    streams[stream + 1] = streams[stream + 2]!;
    streams[stream + 3] = carry;
    return (streams[stream + 2] = t - carry);
  }

  private draw(law: number, stream: number): void {
    const { fixedTicks, drawn } = this;
    if (fixedTicks[law]! >= 0) {
      drawn[0] = fixedTicks[law]!;
      return;
    }
    const { nodes, firstNode, numbers, samplers } = this.program.laws;
    const u = this.uniform(stream);
    const first = firstNode[law]!;
    // The body of the table first, and in one piece: fifteen draws of sixteen end here.
    if (first >= 0 && u >= TAIL && u < 1 - TAIL) {
      const cell = Math.floor(u * CELLS);
      const low = nodes[first + cell]!;
      const number = law * LAW_SIZE;
      let value =
        numbers[number]! + numbers[number + 1]! * (low + (nodes[first + cell + 1]! - low) * (u * CELLS - cell));
      if (value < numbers[number + 2]!) value = numbers[number + 2]!;
      if (numbers[number + 3]! > 0) value = numbers[number + 3]! / value;
      drawn[0] = Math.floor(value + 0.5);
    } else drawn[0] = samplers[law]!.ticks(u);
  }

  private drawTicks(process: number, { samplers, firstLaw, stream }: Draw): number {
    this.draw(samplers.length === 1 ? firstLaw : firstLaw + this.processes.cargo[process]!, stream * STREAM_SIZE);
    return this.drawn[0]!;
  }

  // Waiting and taking

  private wait(process: number, step: Row): void {
    const { phase, askedAt } = this.processes;
    const now = this.clock[0]!;
    phase[process] = NEEDING;
    askedAt[process] = now;
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
    if (!this.flow) head[process] = this.chain.add(step.patienceActivity, askedAt[process]!, head[process]!, false);
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
  private linkStop(process: number, before: number): number {
    const activity = this.program.stoppedActivity[this.stops.lastChanged]!;
    return this.chain.add(activity, this.processes.headTime[process]!, before, false);
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

  /** The time just drawn passes only while the resource works. */
  private startClock(process: number, resource: number): void {
    const { phase, remaining } = this.processes;
    const isWorking = this.program.isWorking[this.resources.now[resource]!] === 1;
    phase[process] = isWorking ? TIMED : STILL;
    if (isWorking) return this.events.set(process, this.clock[0]! + this.drawn[0]!);
    remaining[process] = this.drawn[0]!;
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

  stuck(kind: Standstill["kind"]): void {
    const { program, processes, resources, lines } = this;
    this.standstill = describeStandstill(kind, this.clock[0]!, { program, processes, resources, lines });
  }
}
