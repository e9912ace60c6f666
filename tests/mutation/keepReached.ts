// Notes which functions each test reaches, where the sources carry marks.
import { appendFileSync } from "node:fs";
import path from "node:path";
import { afterAll, afterEach, beforeEach, expect, type TestContext } from "vitest";

type Named = Pick<TestContext["task"], "name" | "suite">;

/** As the runner compares it with a pattern of names. */
function fullName({ name, suite }: Named): string {
  return suite === undefined ? name : `${fullName(suite)} ${name}`;
}

/** The names of functions that were reached since the last look. */
class Reached {
  #called = new Set<string>();
  /** What a module calls while it is loaded lasts for all files of one process. */
  #loading: string | undefined;

  mark(name: string): void {
    this.#called.add(this.#loading === undefined ? name : `${this.#loading}>${name}`);
  }

  load(module?: string): void {
    this.#loading = module;
  }

  taken(): readonly string[] {
    const all = [...this.#called];
    this.#called.clear();
    return all;
  }
}

const keptIn = process.env["REACHED_FUNCTIONS"];
const shared = globalThis as typeof globalThis & { reached?: Reached };

/** Seconds of the processor that this process has used. */
function usedTime(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

function keepFor(kept: string, reached: Reached): void {
  const keep = (test: string, called: readonly string[], time: number) => {
    const file = path.relative(process.cwd(), expect.getState().testPath ?? "");
    appendFileSync(kept, `${JSON.stringify({ file, test, called, time })}\n`);
  };
  const shares: string[] = [];
  let begun = usedTime();
  let outside = 0;
  beforeEach(() => {
    shares.push(...reached.taken());
    outside += usedTime() - begun;
    begun = usedTime();
  });
  afterEach(({ task }) => {
    keep(fullName(task), reached.taken(), usedTime() - begun);
    begun = usedTime();
  });
  // What is called while tests are described, or before all of them, belongs to every test of the file.
  afterAll(() => keep("", [...shares, ...reached.taken()], outside));
}

if (keptIn !== undefined) keepFor(keptIn, (shared.reached = new Reached()));
