// What stops do to steps under way and to steps about to start, and what resources at work do to clocks.
import type { BindingChain } from "./bindingChain.ts";
import type { EventList } from "./eventList.ts";
import type { EventLog } from "./eventLog.ts";
import { HELD, IDLE, STILL, TIMED, type ProcessStates } from "./processStates.ts";
import type { Program } from "./program.ts";
import type { ResourceStates } from "./resourceStates.ts";
import { HOLDS, RUNS_ON, type Row } from "./row.ts";
import type { WaitingLines } from "./waitingLines.ts";

/** What a stop acts upon. */
interface Stoppable {
  readonly program: Program;
  readonly processes: ProcessStates;
  readonly resources: ResourceStates;
  readonly lines: WaitingLines;
  readonly events: EventList;
  readonly chain: BindingChain;
  readonly log: EventLog | undefined;
  readonly clock: Float64Array;
  /** Lets a process go to a step; lets it begin the step before which it was held back. */
  readonly enter: (process: number, row: number) => void;
  readonly begin: (process: number) => void;
}

export class Stops {
  /** The resource whose stop began or ended last; -1 before the first. */
  lastChanged = -1;
  /** Stops in force. */
  inForce = 0;
  readonly #on: Stoppable;
  /** Tick at which the last stop of each resource ended. */
  readonly #endedAt: Float64Array;
  /** Processes that need nothing but the end of a stop. */
  readonly #heldBack: number[] = [];

  constructor(on: Stoppable) {
    this.#on = on;
    this.#endedAt = new Float64Array(on.program.firstState.length).fill(-1);
    on.resources.onTurn = (resource, works) => this.#turnClocks(resource, works);
  }

  stop(resource: number, rule: number): void {
    const { program, processes, resources, lines } = this.#on;
    resources.stopCount[resource]!++;
    this.inForce++;
    this.lastChanged = resource;
    resources.setRunsOn(resource, false);
    for (let process = 0; process < processes.count; process++) {
      const isUnderWay = processes.phase[process]! >= TIMED && this.#occupies(process, resource);
      if (!isUnderWay) continue;
      const effect = program.rows[processes.row[process]!]!.stopEffect[rule]!;
      if (effect === HOLDS) this.#hold(process);
      else if (effect !== RUNS_ON) this.#breakOff(process, effect);
      else if (processes.phase[process] === TIMED) resources.setRunsOn(resource, true);
    }
    this.#write(resource);
    // The rotation skips a stopped process: another's turn may have come.
    lines.changedAll();
  }

  release(resource: number): void {
    const { processes, resources, lines, clock } = this.#on;
    this.inForce--;
    if (--resources.stopCount[resource]! > 0) return;
    this.lastChanged = resource;
    this.#endedAt[resource] = clock[0]!;
    resources.setRunsOn(resource, false);
    for (let process = 0; process < processes.count; process++) {
      if (processes.phase[process] === HELD && this.#isFree(process)) this.#resume(process, resource);
    }
    this.#write(resource);
    for (const process of this.#heldBack.filter((each) => this.#isFree(each))) {
      this.#heldBack.splice(this.#heldBack.indexOf(process), 1);
      processes.phase[process] = IDLE;
      this.#on.begin(process);
    }
    lines.changedAll();
  }

  /** The resource whose stop kept this step from starting until now; the one that changed last where it kept it indirectly. */
  endedFor({ gates }: Row): number {
    const now = this.#on.clock[0]!;
    for (let i = 0; i < gates.length; i++) if (this.#endedAt[gates[i]!] === now) return gates[i]!;
    return this.lastChanged;
  }

  /** A step that ran on is over: the stop is seen until a step starts in spite of it. */
  completed(process: number): void {
    const { program, processes, resources } = this.#on;
    for (const resource of program.rows[processes.row[process]!]!.occupies) {
      if (resources.stopCount[resource] === 0) continue;
      resources.setRunsOn(resource, false);
      this.#write(resource);
    }
  }

  holdBack(process: number): void {
    this.#heldBack.push(process);
  }

  /** The process gives up what it waits for. */
  leaveLine(process: number): void {
    const { program, processes, lines } = this.#on;
    const lead = program.rows[processes.row[process]!]!.needs[0];
    if (lead) lines.leave(lead.place + processes.register(process, lead.by), process);
    else this.#heldBack.splice(this.#heldBack.indexOf(process), 1);
  }

  #hold(process: number): void {
    const { processes, events, clock } = this.#on;
    if (processes.phase[process] !== TIMED) return;
    processes.remaining[process] = events.due[process]! - clock[0]!;
    processes.pausedAt[process] = clock[0]!;
    processes.phase[process] = HELD;
    events.clear(process);
  }

  #breakOff(process: number, row: number): void {
    const { processes, events } = this.#on;
    if (processes.phase[process] === HELD) this.#chainStop(process, this.lastChanged);
    events.clear(process);
    processes.phase[process] = IDLE;
    processes.headTime[process] = this.#on.clock[0]!;
    this.#on.enter(process, row);
  }

  /** The held step goes on; the stop is a segment of its own between its two parts. */
  #resume(process: number, resource: number): void {
    const { program, processes, events, chain } = this.#on;
    const tick = this.#on.clock[0]!;
    this.#chainStop(process, resource);
    processes.head[process] = chain.add(
      program.rows[processes.row[process]!]!.activity,
      tick,
      processes.head[process]!,
      0,
    );
    processes.phase[process] = TIMED;
    events.set(process, tick + processes.remaining[process]!);
  }

  #chainStop(process: number, resource: number): void {
    const { program, processes, chain } = this.#on;
    const activity = program.stoppedActivity[resource]!;
    processes.head[process] = chain.add(activity, processes.pausedAt[process]!, processes.head[process]!, 0);
  }

  #occupies(process: number, resource: number): boolean {
    return this.#on.program.rows[this.#on.processes.row[process]!]!.occupies.includes(resource);
  }

  #isFree(process: number): boolean {
    const { program, processes, resources } = this.#on;
    return program.rows[processes.row[process]!]!.occupies.every((each) => resources.stopCount[each] === 0);
  }

  /** Clocks on working time stand still while their resource does not work. */
  #turnClocks(resource: number, works: boolean): void {
    const { program, processes, events, clock } = this.#on;
    for (const process of program.clocked[resource]!) {
      if (program.rows[processes.row[process]!]!.draw?.clock !== resource) continue;
      if (works && processes.phase[process] === STILL) {
        processes.phase[process] = TIMED;
        events.set(process, clock[0]! + processes.remaining[process]!);
      } else if (!works && processes.phase[process] === TIMED) {
        processes.remaining[process] = events.due[process]! - clock[0]!;
        events.clear(process);
        processes.phase[process] = STILL;
      }
    }
  }

  #write(resource: number): void {
    this.#on.log?.add(this.#on.clock[0]!, resource, this.#on.resources.now[resource]!, -1, -1, -1, -1, 0);
  }
}
