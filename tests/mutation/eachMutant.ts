// Runs every test once as it is, then once with each mutant whose place it passes, until some test notices the mutant.
import { appendFileSync, readFileSync } from "node:fs";
import type { RunnerTestCase as Test } from "vitest";
import { VitestTestRunner } from "vitest/runners";
import { getFn } from "vitest/suite";
import { switchboard, usedTime } from "./switchboard.ts";

const notes = process.env["MUTANT_NOTES"]!;
/** Processor seconds for one mutant. */
const most = Number(process.env["MUTANT_SECONDS"]);
const given = process.env["KILLED_MUTANTS"] ?? "";

const shared = globalThis as typeof globalThis & { killed?: Set<number>; spent?: Map<number, number> };
const killed = (shared.killed ??= new Set(given === "" ? [] : given.split(",").map(Number)));
const spent = (shared.spent ??= new Map());

/** As the list of tests and times has it. */
function nameOf(test: Test): string {
  const names = [];
  for (let each: Test["suite"] | Test = test; each; each = each.suite) names.unshift(each.name);
  return `${test.file.name}\n${names.join(" ")}`;
}

function note(what: string, id: number, by: string): void {
  appendFileSync(notes, `${JSON.stringify({ what, id, by })}\n`);
}

/** Tests that take long as they are, by file and name. */
const long = new Set(JSON.parse(readFileSync(process.env["LONG_TESTS"]!, "utf8")) as readonly string[]);

export default class EachMutant extends VitestTestRunner {
  #file = "";

  async runTask(test: Test): Promise<void> {
    if (this.#file !== test.file.name) note("file", -1, (this.#file = test.file.name));
    if (long.has(nameOf(test))) return;
    const run = async (): Promise<void> => {
      await getFn(test)();
    };
    for (const id of switchboard.passed()) note("loaded", id, test.file.name);
    const begun = usedTime();
    await run();
    const time = usedTime() - begun;
    for (const id of switchboard.passed()) await this.#tryMutant(id, test, time, run);
    switchboard.passed();
  }

  async #tryMutant(id: number, test: Test, time: number, run: () => Promise<void>): Promise<void> {
    const before = spent.get(id) ?? 0;
    if (killed.has(id) || before + time > most) return;
    const by = `${test.file.name} ${test.name}`;
    note("tried", id, by);
    const begun = usedTime();
    const fails = await switchboard.failsWith(id, 5 + 20 * time, run);
    spent.set(id, before + usedTime() - begun);
    if (!fails) return;
    // A failure that stays says nothing about this mutant: an earlier one has left something behind.
    if (await switchboard.failsWith(-1, Infinity, run)) return note("stained", id, by);
    killed.add(id);
    note("killed", id, by);
  }
}
