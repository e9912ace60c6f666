// The one state of every resource at any time, and the ticks spent in each.
import { ActivePeriods } from "./activePeriods.ts";
import { JointTime } from "./jointTime.ts";
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
  onTurn: (resource: number, works: boolean, tick: number) => void = () => undefined;
  readonly periods: ActivePeriods;
  readonly joint: JointTime;
  readonly #program: Program;
  /** Of each state: WORKING, ACTIVE, both or neither, and its class. */
  readonly #meaning: Uint8Array;
  readonly #since: Float64Array;
  /** The state that would be shown without a stop, and whether a step runs on and is shown in spite of it. */
  readonly #meant: Int32Array;
  readonly #runsOn: Uint8Array;

  constructor(
    program: Program,
    isActive: Uint8Array = program.isWorking,
    classes: Uint8Array = new Uint8Array(program.states.length),
  ) {
    const resources = program.firstState.length;
    this.#program = program;
    this.#meaning = isActive.map(
      (active, state) => active * ACTIVE + program.isWorking[state]! * WORKING + classes[state]! * CLASS,
    );
    this.joint = new JointTime(
      Math.max(0, ...classes) + 1,
      Array.from(program.firstState, (state) => classes[state]!),
    );
    this.periods = new ActivePeriods(resources);
    program.firstState.forEach((state, resource) => isActive[state] === 1 && this.periods.begin(resource, 0));
    this.ticks = new Float64Array(program.states.length);
    this.now = program.firstState.slice();
    this.stopCount = new Int32Array(resources);
    this.#since = new Float64Array(resources);
    this.#meant = program.firstState.slice();
    this.#runsOn = new Uint8Array(resources);
  }

  show(resource: number, state: number, runsOn: boolean, tick: number): void {
    this.#meant[resource] = state;
    if (this.stopCount[resource] === 0) return this.#enter(resource, state, tick);
    this.#runsOn[resource] = runsOn ? 1 : 0;
    this.display(resource, tick);
  }

  /** True where waiting in this state would be news. */
  differs(resource: number, state: number): boolean {
    return this.#meant[resource] !== state || this.#runsOn[resource] === 1;
  }

  /** Lets the step under way go on, and be seen, in spite of a stop; or ends that. */
  setRunsOn(resource: number, runsOn: boolean, tick: number): void {
    this.#runsOn[resource] = runsOn ? 1 : 0;
    this.display(resource, tick);
  }

  /** Shows what the stops leave to be seen. */
  display(resource: number, tick: number): void {
    const isStopped = this.stopCount[resource]! > 0 && this.#runsOn[resource] === 0;
    this.#enter(resource, isStopped ? this.#program.stoppedState[resource]! : this.#meant[resource]!, tick);
  }

  /** Books the time since each resource's last change of state. */
  settle(tick: number): void {
    this.joint.settle(tick);
    for (let resource = 0; resource < this.now.length; resource++) {
      this.ticks[this.now[resource]!]! += tick - this.#since[resource]!;
      this.#since[resource] = tick;
    }
  }

  #enter(resource: number, state: number, tick: number): void {
    const before = this.now[resource]!;
    if (state === before) return;
    this.ticks[before]! += tick - this.#since[resource]!;
    this.#since[resource] = tick;
    this.now[resource] = state;
    if (this.#meaning[state] !== this.#meaning[before]) this.#turn(resource, state, before, tick);
  }

  #turn(resource: number, state: number, before: number, tick: number): void {
    const is = this.#meaning[state]!;
    const was = this.#meaning[before]!;
    if (classOf(is) !== classOf(was)) this.joint.move(classOf(was), classOf(is), tick);
    const isActive = is & ACTIVE;
    if (isActive !== (was & ACTIVE)) {
      if (isActive > 0) this.periods.begin(resource, tick);
      else this.periods.pause(resource, tick);
    }
    const works = is & WORKING;
    if (works !== (was & WORKING) && this.#program.clocked[resource]!.length > 0) {
      this.onTurn(resource, works > 0, tick);
    }
  }
}
