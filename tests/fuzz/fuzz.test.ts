// Random scenarios, and every one that once failed: reading, `check` and `run` answer as they should.
import { readdirSync, readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { isLong } from "../support/caseCount.ts";
import { fuzzCase, schema } from "./fuzzCase.ts";
import { judge } from "./judge.ts";
import { underGuard } from "./watchdog.ts";

/** `FUZZ=1000000` sets another number of inputs, and `FUZZ_SEED` another seed; a failure names its seed and number. */
const count = Number(process.env["FUZZ"] ?? (isLong ? 100_000 : 2000));
/** Always the same inputs, so that a change of the program alone can break the test. */
const seed = process.env["FUZZ_SEED"] ?? "blowcell";

/** Reading is cheap, a run is not. */
const checkedEach = 100;
const runEach = 500;
const depthOf = (number: number): "read" | "check" | "run" =>
  number % runEach === 0 ? "run" : number % checkedEach === 0 ? "check" : "read";

const mostShown = 10;

it(`${count} random scenarios of seed ${seed}`, { timeout: 2 ** 31 - 1 }, () => {
  const faults: string[] = [];
  const [unwritten, neverAccepted] = [new Set(schema.keys()), new Set(schema.keys())];
  let accepted = 0;
  underGuard(seed, count, (number) => {
    const input = fuzzCase(seed, number);
    const verdict = judge(input, depthOf(number));
    faults.push(...verdict.faults.slice(0, mostShown).map((fault) => `${number}: ${fault}`));
    accepted += verdict.accepted ? 1 : 0;
    for (const [, key] of input.text.matchAll(/(\$?\w+)"?:/gu)) {
      unwritten.delete(key!);
      if (verdict.accepted) neverAccepted.delete(key!);
    }
  });
  expect(faults.slice(0, mostShown)).toEqual([]);
  // Neither all refused nor all accepted, and nearly every key of the schema in some scenario that is accepted.
  expect(accepted / count).toBeGreaterThan(0.2);
  expect(accepted / count).toBeLessThan(0.8);
  expect([...unwritten].slice(5)).toEqual([]);
  expect([...neverAccepted].slice(20)).toEqual([]);
});

const seeds = new URL("seeds/", import.meta.url);
const column = "shot,cool_s\n1,7.5\n2,7.25 s\n3,8\n";

it.each(readdirSync(seeds))("once failed: %s", (file) => {
  const text = readFileSync(new URL(file, seeds), "utf8");
  underGuard(file, 1, () => expect(judge({ text, set: [], column }, "check").faults).toEqual([]));
});
