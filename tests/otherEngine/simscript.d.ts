// The part of simscript that the models use, so that types are checked where the library is not installed.
declare module "simscript" {
  interface Event {
    addEventListener(listener: () => void): void;
  }

  export class Queue {
    constructor(name: string, capacity?: number);
    readonly averageLength: number;
  }

  export class Simulation {
    readonly started: Event;
    readonly finished: Event;
    readonly timeNow: number;
    timeEnd: number | null;
    yieldInterval: number;
    start(reset?: boolean): Promise<void>;
    activate(entity: Entity): Promise<number>;
  }

  // oxlint-disable-next-line typescript/no-unnecessary-type-parameters -- the library's own parameter
  export class Entity<S extends Simulation = Simulation> {
    readonly simulation: S;
    script(): Promise<void>;
    delay(time: number): Promise<number>;
    enterQueue(queue: Queue): Promise<number>;
    enterQueueImmediately(queue: Queue): void;
    leaveQueue(queue: Queue): void;
  }

  export class Exponential {
    constructor(mean: number, seed?: number);
    sample(): number;
  }
}
