// The histogram of finish times: every run is counted once, and no bin holds runs of both sides of the due date.
import { describe, expect, it } from "vitest";
import fc from "fast-check";
import { finishBins } from "#report/charts/order/finishBins.ts";

const hour = 3600;

describe("the bins of finish times", () => {
  it("count every run once, on its side of the due date", () => {
    const times = fc.array(fc.integer({ min: 1, max: 1_000_000 }), { minLength: 1, maxLength: 50 });
    fc.assert(
      fc.property(times, fc.option(fc.integer({ min: 1, max: 1_000_000 })), (finish, due) => {
        const bins = finishBins(finish, due);
        expect(bins.length).toBeLessThanOrEqual(38);
        for (const { from, until, runs, isOnTime } of bins) {
          const within = finish.filter((seconds) => seconds > from && seconds <= until);
          expect(runs).toBe(within.length);
          expect(within.every((seconds) => due === null || seconds <= due)).toBe(isOnTime || within.length === 0);
        }
        expect(bins.reduce((sum, { runs }) => sum + runs, 0)).toBe(finish.length);
      }),
    );
  });

  it("count a run that ends at the due date as on time", () => {
    expect(finishBins([hour, 3 * hour], hour)).toMatchObject([
      { until: hour, runs: 1, isOnTime: true },
      ...Array.from({ length: 23 }, () => ({ runs: 0, isOnTime: false })),
      { runs: 1, isOnTime: false },
    ]);
    expect(finishBins([], hour)).toEqual([]);
  });
});
