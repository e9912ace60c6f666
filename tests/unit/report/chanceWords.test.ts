// The chance of a due date as a count of such weeks or orders.
import { describe, expect, it } from "vitest";
import { lookAt } from "#analysis/promise/looks.ts";
import { wilsonInterval } from "#analysis/statistics/wilsonInterval.ts";
import { chanceWords } from "#report/answers/chanceWords.ts";

const day = 86_400;

function wordsOf(onTime: number, replications: number, days: number): string {
  const look = lookAt(onTime, replications, 0.95, true);
  return chanceWords({ onTime, replications, share: onTime / replications, ...look, slack: 0 }, { due: days * day });
}

describe("the chance as a count", () => {
  it.each([
    [90, 100, 4.3, "About 9 of 10 such weeks end on time"],
    [87, 100, 7, "About 87 of 100 such weeks end on time"],
    [90, 100, 2, "About 9 of 10 such orders end on time"],
    [90, 100, 12, "About 9 of 10 such orders end on time"],
    // Never all and never none where both kinds of runs are there.
    [1999, 2000, 5, "About 99 of 100 such weeks end on time"],
    [1, 2000, 5, "About 1 of 100 such weeks end on time"],
  ])("%i of %i runs in %d days: %s", (onTime, runs, days, words) => {
    // [R] Wilson's interval is tested against its published formula where it is computed.
    const { low, high } = wilsonInterval(onTime, runs);
    expect(wordsOf(onTime, runs, days)).toBe(
      `${words} (95 % confidence: ${Math.round(100 * low)} to ${Math.round(100 * high)} of 100).`,
    );
  });

  it("has one end of the interval where all runs are alike", () => {
    // [C] Wilson's bounds for 20 of 20 at z = 1.96: n / (n + z²) = 0.839, and 0.161 for none.
    expect(wordsOf(20, 20, 5)).toBe("All 20 runs are on time: at least 84 of 100 such weeks with 95 % confidence.");
    expect(wordsOf(0, 20, 5)).toBe("None of 20 runs is on time: at most 16 of 100 such weeks with 95 % confidence.");
  });
});
