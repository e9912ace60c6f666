// Holds every run to L = λW.
import { describe, expect, test } from "vitest";
import type { Distribution } from "#engine/distributions/distribution.ts";
import { runQueue } from "../../support/queueRuns.ts";
import { exponential, machineRepair, openQueue } from "../../support/queueTables.ts";

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** Mean stay of the arrivals, cut at `until`. */
const stay = (arrivals: readonly number[], departures: readonly number[], until: number): number =>
  (sum(departures) + (arrivals.length - departures.length) * until - sum(arrivals)) / arrivals.length;

// Little, A proof for the queuing formula, Operations Research 9 (1961) 383 [M]. L comes from the state times, λ and W from the
// marks of arrivals and departures. Stays are cut at the end of the run, so that the formula is exact for every run.
describe("L = λW", () => {
  test.each<[string, Distribution]>([
    ["exponential", exponential(0.8)],
    ["uniform", { kind: "uniform", min: 0, max: 1.6 }],
    ["constant", { kind: "fixed", value: 0.8 }],
  ])("holds at the server, %s service", (_name, service) => {
    for (const run of runQueue(openQueue(exponential(1), service, 1), 40, 0, 3000)) {
      const departures = run.times("served");
      // First come, first served: a service begins at the arrival or at the previous departure, whichever is later.
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
  ])("holds for %i machines at %i operators", (machines, operators) => {
    for (const run of runQueue(machineRepair(machines, operators, exponential(2), exponential(0.2)), 10, 0, 500)) {
      const failures = run.times("failures");
      const broken = machines - run.meanIn("running");
      expect(broken).toBeCloseTo(run.rate("failures") * stay(failures, run.times("repairs"), run.until), 9);
    }
  });
});
