// The loop's generator of random numbers against seedrandom's alea, bit for bit.
import { expect, test } from "vitest";
import type { StepSpec, TimeSpec } from "#engine/compiler/stepTable.ts";
import { caseCount } from "../../support/caseCount.ts";
import { drawer, drawnTimes } from "../../support/draws/drawnTimes.ts";
import { openStream } from "../../support/draws/openStream.ts";

const streams = caseCount;
const count = 100_000;
const seeds = Array.from({ length: streams }, (_, i) => `generator ${i}`);

/** A time in ticks equal to the random number in units of 2^-32, divided by `share`; its arithmetic is exact. */
function numberItself(share = 1): TimeSpec {
  return {
    distributions: [{ distribution: { kind: "uniform", min: 0, max: 2 ** 32 / share }, factor: 1e-6 }],
    stream: "numbers",
  };
}

/** The sampler reads u = 0 as half a unit of 2^-32, which rounds up. */
function ticksOf(u: number, share = 1): number {
  return u === 0 ? Math.round(0.5 / share) : Math.round((u * 2 ** 32) / share);
}

/** The index of the first number that differs, or -1. */
function firstDifference(
  steps: readonly StepSpec[],
  seed: string,
  expected: (next: () => number) => () => number,
): number {
  const next = expected(openStream(seed, 0, drawer, "numbers"));
  return drawnTimes(steps, { seed, count, meanTicks: 2 ** 30 }).findIndex((ticks) => ticks !== next());
}

test(`${streams} streams of ${count} numbers drawn ahead equal the numbers of seedrandom`, () => {
  const steps = [{ name: "draw", time: numberItself() }];
  const differing = seeds.filter((seed) => firstDifference(steps, seed, (next) => () => ticksOf(next())) !== -1);
  expect(differing).toEqual([]);
});

test("numbers drawn one at a time for alternating and repeated distributions equal those of seedrandom", () => {
  const steps = [
    { name: "draw", time: numberItself() },
    { name: "draw a half", time: numberItself(2) },
    { name: "draw again", time: { ...numberItself(), again: true as const } },
  ];
  const inTurn = (next: () => number) => {
    let turn = 0;
    let last = 0;
    return () => {
      if (turn < 2) last = next();
      const ticks = ticksOf(last, turn === 1 ? 2 : 1);
      turn = (turn + 1) % 3;
      return ticks;
    };
  };
  expect(seeds.slice(0, 10).filter((seed) => firstDifference(steps, seed, inTurn) !== -1)).toEqual([]);
});

test("numbers that decide a chance equal those of seedrandom", () => {
  const fixed = (value: number): TimeSpec => ({
    distributions: [{ distribution: { kind: "fixed", value }, factor: 1e-6 }],
  });
  const steps: readonly StepSpec[] = [
    { name: "numbers", time: fixed(2), chance: { of: 0.3, next: "short" }, counts: {} },
    { name: "long", time: fixed(3), next: "numbers" },
    { name: "short", time: fixed(1), next: "numbers" },
  ];
  const differing = seeds.slice(0, 10).filter((seed) => {
    const next = openStream(seed, 0, drawer, "numbers chance");
    const times = drawnTimes(steps, { seed, count, meanTicks: 4 });
    return times.some((ticks) => ticks !== (next() < 0.3 ? 3 : 5));
  });
  expect(differing).toEqual([]);
});

test("numbers of another seed differ, so the comparison can fail", () => {
  const steps = [{ name: "draw", time: numberItself() }];
  const other = openStream("another seed", 0, drawer, "numbers");
  expect(firstDifference(steps, seeds[0]!, () => () => ticksOf(other()))).toBe(0);
});
