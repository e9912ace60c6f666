// The one state of every resource at any time, and the ticks spent in each.
import { ActivePeriods } from "./activePeriods.ts";
import { JointTime } from "./jointTime.ts";
import type { Memory } from "./memory.ts";
import type { Program } from "./program.ts";

/** The clocks that wait for a resource's work run; its active period goes on. */
const WORKING = 1;
const ACTIVE = 2;
/** The class for the time of all resources together stands above these. */
const CLASS = 4;
const classOf = (meaning: number): number => Math.trunc(meaning / CLASS);

export class ResourceStates {
  /** Ticks in each state since the observation began; up to date after `settle`. */
  readonly ticks: Float64Array;
  /** The state shown now. */
  readonly now: Int32Array;
  /** Stops that hold the resource at present. */
  readonly stopCount: Int32Array;
  /** Told of a resource that begins or ceases to work while clocks wait for it. */
  onTurn: (resource: number, works: boolean) => void = () => undefined;
  readonly periods: ActivePeriods;
  readonly joint: JointTime;
  readonly #program: Program;
  readonly #clock: Float64Array;
  /** Of each state: WORKING, ACTIVE, both or neither, and its class. */
  readonly meaning: Int32Array;
  /** Tick of each resource's last change of state. */
  readonly since: Float64Array;
  /** The state that would be shown without a stop, and whether a step runs on and is shown in spite of it. */
  readonly meant: Int32Array;
  readonly #runsOn: Uint8Array;

  constructor(
    program: Program,
    memory: Memory,
    clock: Float64Array,
    isActive: Uint8Array = program.isWorking,
    classes: Uint8Array = new Uint8Array(program.states.length),
  ) {
    const resources = program.firstState.length;
    this.#program = program;
    this.#clock = clock;
    this.meaning = memory.takeWholes(
      program.states.map((_, i) => isActive[i]! * ACTIVE + program.isWorking[i]! * WORKING + classes[i]! * CLASS),
    );
    this.joint = new JointTime(
      Math.max(0, ...classes) + 1,
      Array.from(program.firstState, (state) => classes[state]!),
    );
    this.periods = new ActivePeriods(resources, clock);
    program.firstState.forEach((state, resource) => isActive[state] === 1 && this.periods.begin(resource));
    this.ticks = memory.takeReals(program.states.map(() => 0));
    this.now = memory.takeWholes(program.firstState);
    this.stopCount = memory.takeWholes(new Int32Array(resources));
    this.since = memory.takeReals(new Float64Array(resources));
    this.meant = memory.takeWholes(program.firstState);
    this.#runsOn = new Uint8Array(resources);
  }

  show(resource: number, state: number, runsOn: boolean): void {
    this.meant[resource] = state;
    if (this.stopCount[resource] === 0) return this.#enter(resource, state);
    this.#runsOn[resource] = runsOn ? 1 : 0;
    this.display(resource);
  }

  /** True where waiting in this state would be news. */
  differs(resource: number, state: number): boolean {
    return this.meant[resource] !== state || this.#runsOn[resource] === 1;
  }

  /** Lets the step under way go on, and be seen, in spite of a stop; or ends that. */
  setRunsOn(resource: number, runsOn: boolean): void {
    this.#runsOn[resource] = runsOn ? 1 : 0;
    this.display(resource);
  }

  /** Shows what the stops leave to be seen. */
  display(resource: number): void {
    const isStopped = this.stopCount[resource]! > 0 && this.#runsOn[resource] === 0;
    this.#enter(resource, isStopped ? this.#program.stoppedState[resource]! : this.meant[resource]!);
  }

  /** Books the time since each resource's last change of state. */
  settle(): void {
    const tick = this.#clock[0]!;
    this.joint.settle(tick);
    for (let resource = 0; resource < this.now.length; resource++) {
      this.ticks[this.now[resource]!]! += tick - this.since[resource]!;
      this.since[resource] = tick;
    }
  }

  #enter(resource: number, state: number): void {
    const before = this.now[resource]!;
    if (state === before) return;
    const tick = this.#clock[0]!;
    this.ticks[before]! += tick - this.since[resource]!;
    this.since[resource] = tick;
    this.now[resource] = state;
    if (this.meaning[state] !== this.meaning[before]) this.turn(resource, state, before);
  }

  /** A state that means something else to clocks or to active periods has been entered. */
  turn(resource: number, state: number, before: number): void {
    const is = this.meaning[state]!;
    const was = this.meaning[before]!;
    if (classOf(is) !== classOf(was)) this.joint.move(classOf(was), classOf(is), this.#clock[0]!);
    const isActive = is & ACTIVE;
    if (isActive !== (was & ACTIVE)) {
      if (isActive > 0) this.periods.begin(resource);
      else this.periods.pause(resource);
    }
    const works = is & WORKING;
    if (works !== (was & WORKING) && this.#program.clocked[resource]!.length > 0) this.onTurn(resource, works > 0);
  }
}
