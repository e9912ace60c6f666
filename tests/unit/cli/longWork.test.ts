// Holds what a long call says of its time and its files, and how its work is shared out.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { announcement } from "#cli/labor/announce.ts";
import { Pace } from "#cli/labor/pace.ts";
import { longestFirst } from "#cli/labor/pieces.ts";
import { secondsLeft, timeLeft } from "#cli/machine/timeLeft.ts";

describe("the time left", () => {
  it("is estimated until something is known", () => {
    expect(timeLeft(0, 30)).toBe("estimating the time left");
    expect(timeLeft(0.01, 30)).toBe("estimating the time left");
  });

  it("is that of the rest at the pace so far", () => {
    expect(timeLeft(0.25, 30)).toBe("90 s left");
    expect(timeLeft(0.1, 60)).toBe("9 min left");
    expect(timeLeft(0.05, 1800)).toBe("9.5 h left");
    expect(timeLeft(1, 60)).toBe("0 s left");
  });

  it("is within a factor of two after a tenth, where no part is twice as slow as another", () => {
    const paces = fc.array(fc.double({ min: 0.7, max: 1.4, noNaN: true }), { minLength: 10, maxLength: 100 });
    fc.assert(
      fc.property(paces, (seconds) => {
        const sum = (parts: readonly number[]): number => parts.reduce((total, each) => total + each, 0);
        const first = Math.ceil(seconds.length / 10);
        const left = sum(seconds.slice(first));
        const told = secondsLeft(first / seconds.length, sum(seconds.slice(0, first)))!;
        expect(told / left).toBeGreaterThan(0.49);
        expect(told / left).toBeLessThan(2.01);
      }),
    );
  });
});

describe("a long call", () => {
  it("says nothing of a minute and 50 MB", () => {
    expect(announcement({ seconds: 60, bytes: 50e6, jobs: 2 })).toBeUndefined();
  });

  it("says how long it takes and how much it writes", () => {
    expect(announcement({ seconds: 700, bytes: 0, jobs: 1 })).toBe("This run takes about 12 min in one thread.");
    expect(announcement({ seconds: 10, bytes: 776e6, jobs: 2 })).toBe("This run writes about 780 MB of events.");
    expect(announcement({ seconds: 20_000, bytes: 3.21e9, jobs: 2 })).toBe(
      "This run takes about 5.6 h in 2 threads and writes about 3.2 GB of events.",
    );
  });
});

describe("work for several threads", () => {
  const works = fc.array(fc.integer({ min: 0, max: 300 }), { minLength: 1, maxLength: 6 });

  it("is cut so that each task not done here is in exactly one piece, the longest first", () => {
    fc.assert(
      fc.property(works, fc.integer({ min: 0, max: 50 }), fc.integer({ min: 1, max: 8 }), (sizes, already, jobs) => {
        const all = sizes.map((size, of) => ({ tasks: Array.from({ length: size }, (_, i) => `${of}.${i}`) }));
        const tasks = all.flatMap((work) => work.tasks);
        const done = Math.min(already, tasks.length);
        const pieces = longestFirst(all, done, jobs, (work) => work.tasks.length);
        expect(pieces.flatMap(({ work }) => work.tasks).toSorted()).toEqual(tasks.slice(done).toSorted());
        for (const { of, from, work } of pieces)
          expect(all[of]!.tasks.slice(from, from + work.tasks.length)).toEqual(work.tasks);
        const efforts = pieces.map(({ effort }) => effort);
        expect(efforts).toEqual(efforts.toSorted((a, b) => b - a));
        if (tasks.length - done < 100) expect(efforts.every((effort) => effort === 1)).toBe(true);
      }),
    );
  });

  it("is expected to last as its first tasks did, without the first of all", () => {
    const pace = new Pace();
    expect(pace.secondsOf(3)).toBe(3);
    pace.add(0.001, 0.1);
    expect(pace.secondsOf(3)).toBe(3);
    pace.add(0.1, 2);
    expect(pace.secondsOf(3)).toBe(60);
  });

  it("is expected to last as a long first task did", () => {
    const pace = new Pace();
    pace.add(0.22, 5);
    expect(pace.secondsOf(0.22)).toBeCloseTo(5, 12);
  });
});
