// Two queues written for simscript, a small event library that shares no code and no idea with the engine under test.
import { Entity, Exponential, Queue, Simulation } from "simscript";

export { Exponential };

/** Gives the next time of a step, in whatever unit the caller counts. */
export type NextTime = () => number;

export interface QueueRun {
  /** Time average of the number in the system, as the library itself keeps it. */
  readonly meanNumber: number;
  /** Times at which a service was over, ascending. */
  readonly ends: readonly number[];
}

/** The library counts those present in an unlimited queue and lets them take places in a limited one. */
class Shop extends Simulation {
  readonly present = new Queue("present");
  readonly servers: Queue;
  readonly ends: number[] = [];

  constructor(servers: number, until: number) {
    super();
    this.servers = new Queue("servers", servers);
    this.timeEnd = until;
    // Otherwise it hands over to the browser's next animation frame every so often, which Node does not have.
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

/** Present are the machines that stand still, waiting for a repairer or under repair. */
export function runMachineRepair(
  machines: readonly MachineTimes[],
  repairers: number,
  until: number,
): Promise<QueueRun> {
  return new Shop(repairers, until).run(machines.map((times) => new Machine(times)));
}
