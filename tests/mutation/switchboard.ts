// Knows which mutant is on, which ones a test has passed, and how long it may go on.

/** The number of no mutant. */
const none = -1;
/** Turns of loops between two looks at the clock of the processor. */
const turnsBetween = 8192;

export function usedTime(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

class Switchboard {
  #on = none;
  #until = Infinity;
  #turns = 0;
  #passed = new Set<number>();

  isOn(id: number): boolean {
    if (this.#on === none) this.#passed.add(id);
    return this.#on === id;
  }

  turn(): void {
    if (++this.#turns % turnsBetween === 0 && usedTime() > this.#until)
      throw new Error("the mutant goes on without end");
  }

  /** Mutants whose places were passed since the last call. */
  passed(): readonly number[] {
    const all = [...this.#passed];
    this.#passed.clear();
    return all;
  }

  /** Whether a test fails with a mutant on, within so many seconds. */
  async failsWith(id: number, seconds: number, test: () => Promise<unknown>): Promise<boolean> {
    this.#on = id;
    this.#until = usedTime() + seconds;
    try {
      await test();
      return false;
    } catch {
      return true;
    } finally {
      this.#on = none;
      this.#until = Infinity;
    }
  }
}

const shared = globalThis as typeof globalThis & { switchboard?: Switchboard; isOn?: unknown; turn?: unknown };

/** One for the process, because the sources that ask it outlast a file of tests. */
export const switchboard = (shared.switchboard ??= new Switchboard());
shared.isOn = (id: number): boolean => switchboard.isOn(id);
shared.turn = (): void => switchboard.turn();
