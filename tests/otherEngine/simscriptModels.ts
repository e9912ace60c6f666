// Two queues written for simscript, an event library that shares no code with the engine under test.
import { Entity, Exponential, Queue, Simulation } from "simscript";

export { Exponential };

/** The next duration of a step, in the caller's unit. */
export type NextTime = () => number;

export interface QueueRun {
  /** Time average of the number in the system, computed by the library. */
  readonly meanNumber: number;
  /** Times at which services ended, ascending. */
  readonly ends: readonly number[];
}

/** The unlimited queue `present` counts the entities in the system; the limited queue `servers` holds those in service. */
class Shop extends Simulation {
  readonly present = new Queue("present");
  readonly servers: Queue;
  readonly ends: number[] = [];

  constructor(servers: number, until: number) {
    super();
    this.servers = new Queue("servers", servers);
    this.timeEnd = until;
    // With a finite interval the library waits for the browser's animation frames, which Node does not have.
    this.yieldInterval = Infinity;
  }

  async run(entities: readonly Entity<Shop>[]): Promise<QueueRun> {
    const finished = new Promise<void>((resolve) => this.finished.addEventListener(() => resolve()));
    this.started.addEventListener(() => {
      for (const entity of entities) void this.activate(entity);
    });
    await this.start(true);
    await finished;
    return { meanNumber: this.present.averageLength, ends: this.ends };
  }
}

abstract class Served extends Entity<Shop> {
  async beServed(time: NextTime): Promise<void> {
    const { present, servers, ends } = this.simulation;
    this.enterQueueImmediately(present);
    await this.enterQueue(servers);
    await this.delay(time());
    this.leaveQueue(servers);
    this.leaveQueue(present);
    ends.push(this.simulation.timeNow);
  }
}

class Customer extends Served {
  readonly #service: NextTime;

  constructor(service: NextTime) {
    super();
    this.#service = service;
  }

  override async script(): Promise<void> {
    await this.beServed(this.#service);
  }
}

class Source extends Entity<Shop> {
  readonly #interval: NextTime;
  readonly #service: NextTime;

  constructor(interval: NextTime, service: NextTime) {
    super();
    this.#interval = interval;
    this.#service = service;
  }

  override async script(): Promise<void> {
    for (;;) {
      await this.delay(this.#interval());
      void this.simulation.activate(new Customer(this.#service));
    }
  }
}

export interface MachineTimes {
  readonly life: NextTime;
  readonly repair: NextTime;
}

class Machine extends Served {
  readonly #times: MachineTimes;

  constructor(times: MachineTimes) {
    super();
    this.#times = times;
  }

  override async script(): Promise<void> {
    for (;;) {
      await this.delay(this.#times.life());
      await this.beServed(this.#times.repair);
    }
  }
}

export function runSingleServer(interval: NextTime, service: NextTime, until: number): Promise<QueueRun> {
  return new Shop(1, until).run([new Source(interval, service)]);
}

/** The machines in the system are those that wait for a repairer or are under repair. */
export function runMachineRepair(
  machines: readonly MachineTimes[],
  repairers: number,
  until: number,
): Promise<QueueRun> {
  return new Shop(repairers, until).run(machines.map((times) => new Machine(times)));
}
