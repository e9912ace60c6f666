// Laws of every replication, however short it is and wherever its observation begins and ends.
import { readdirSync } from "node:fs";
import * as fc from "fast-check";
import { expect, test } from "vitest";
import { doWork } from "#analysis/replication/work.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";
import { caseCount } from "../../support/caseCount.ts";
import { shippedText } from "../../support/reported.ts";

const names = readdirSync(new URL("../../../scenarios", import.meta.url)).flatMap((file) =>
  file.endsWith(".yaml") ? [file.slice(0, -".yaml".length)] : [],
);

/** Changes that make verdicts and stops frequent. */
const hard: readonly (readonly [name: string, ...set: readonly string[]])[] = [
  ...names.map((name) => [name] as const),
  ["bottle-continuous", "maxInMold=9.5 s"],
  ["bottle-continuous", "maxInMold=11 s"],
  ["two-station", "maxInMold=12 s"],
  ["stops-and-repairs", "stops[0].between=1 min"],
  ["stops-and-repairs", "stops[1].between=3 min", "stops[2].cycles=10"],
  ["stops-and-repairs", "stops[0].between=5 min", "stops[0].step=hold"],
];

const perHour = (answer: ReplicationAnswer, measure: string): number =>
  answer.measures.find((each) => each.resource === "cell" && each.measure === measure)?.value ?? 0;

function answerOf(name: string, set: readonly string[], seconds: number, warmup: number): ReplicationAnswer {
  const settings = [...set, `run.length=${warmup + seconds} s`, `run.warmup=${warmup} s`, "run.replications=1"];
  const text = shippedText(name);
  const read = readSettled(text, { name, file: `${name}.yaml`, set: text.includes("calendar:") ? set : settings });
  const { scenario } = read;
  if (!scenario) throw new Error(JSON.stringify(read.issues));
  const [found] = doWork({ kind: "replications", scenario, tasks: [{ replication: 1, scale: null }] });
  return found!;
}

test("a part counts once: good parts and rejects add up to the parts, and all shares are shares", () => {
  const cases = fc.tuple(
    fc.constantFrom(...hard),
    fc.integer({ min: 20, max: 1500 }),
    fc.integer({ min: 0, max: 400 }),
  );
  fc.assert(
    fc.property(cases, ([[name, ...set], seconds, warmup]) => {
      const found = answerOf(name, set, seconds, warmup);
      const rejects = found.measures
        .filter(({ resource, measure }) => resource === "cell" && measure.startsWith("rejects: "))
        .reduce((sum, { value }) => sum + value, 0);
      const [good, parts] = [perHour(found, "good parts per hour"), perHour(found, "parts per hour")];
      expect(good).toBeGreaterThanOrEqual(0);
      expect(good + rejects).toBeCloseTo(parts, 6);
      for (const { measure, value } of found.measures) {
        expect(value, measure).toBeGreaterThanOrEqual(0);
        if (measure === "reject share") expect(value).toBeLessThanOrEqual(1);
      }
      const shares = found.criticalShares.map(({ share }) => share);
      for (const share of shares) expect(share).toBeGreaterThanOrEqual(0);
      if (shares.length > 0) expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
    }),
    { numRuns: 2 * caseCount },
  );
});

test("a stop under way at the end of the warm-up counts from there: its share is at most 1", () => {
  const found = answerOf("stops-and-repairs", ["stops[0].between=1 min"], 3300, 300);
  const stopped = found.criticalShares.filter(({ step }) => step === "stopped");
  expect(stopped.reduce((sum, { share }) => sum + share, 0)).toBeGreaterThan(0.5);
  for (const { share } of found.criticalShares) expect(share).toBeLessThanOrEqual(1);
});
