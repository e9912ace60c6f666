// L = λW in every run, λ the accepted rate: Little, Operations Research 9 (1961) 383 [M]. L is what the states say, W what the
// marks of arrivals and departures say: two accounts of one run, equal whatever the draws, since every stay is cut at its end.
import { describe, expect, test } from "vitest";
import type { Distribution } from "#engine/distributions/distribution.ts";
import { runQueue } from "../../support/queueRuns.ts";
import { exponential, machineRepair, openQueue } from "../../support/queueTables.ts";

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** Mean stay of those who came, cut at `until`. */
const stay = (arrivals: readonly number[], departures: readonly number[], until: number): number =>
  (sum(departures) + (arrivals.length - departures.length) * until - sum(arrivals)) / arrivals.length;

describe("L = λW", () => {
  test.each<[string, Distribution]>([
    ["exponential", exponential(0.8)],
    ["uniform", { kind: "uniform", min: 0, max: 1.6 }],
    ["constant", { kind: "fixed", value: 0.8 }],
  ])("at the server, %s service", (_name, service) => {
    for (const run of runQueue(openQueue(exponential(1), service, 1), 40, 0, 3000)) {
      const departures = run.times("served");
      // First come, first served: a service begins at the arrival, or at the departure before if that is later.
      const begun = run
        .times("arrivals")
        .map((arrival, i) => Math.max(arrival, i === 0 ? 0 : (departures[i - 1] ?? run.until)));
      const services = begun.filter((start) => start < run.until);
      expect(run.meanIn("busy")).toBeCloseTo((services.length / run.until) * stay(services, departures, run.until), 9);
    }
  });

  test.each([
    [22, 1],
    [22, 2],
    [5, 2],
  ])("of %i machines at %i operators", (machines, operators) => {
    for (const run of runQueue(machineRepair(machines, operators, exponential(2), exponential(0.2)), 10, 0, 500)) {
      const failures = run.times("failures");
      const broken = machines - run.meanIn("running");
      expect(broken).toBeCloseTo(run.rate("failures") * stay(failures, run.times("repairs"), run.until), 9);
    }
  });
});
