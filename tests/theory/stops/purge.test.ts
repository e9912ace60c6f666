// The time of a purge: mass over the screw's rate, with one draw for the whole mass from a stream of its own.
import { describe, expect, it } from "vitest";
import { meanInterval } from "#analysis/statistics/interval.ts";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";
import { simulatedSteps } from "../../support/recursions/recursionComparison.ts";

const calendar = `calendar: { from: 2026-03-23, shifts: [{ start: "06:00", end: "14:00" }] }
startUp: { afterOff: 6 h, purge: 2 kg }`;
const blue = "{ name: to blue, kind: color, after: 8 h, time: 20 min, residue: 1 % }";
const green = "{ name: to green, kind: color, after: 11 h, time: 20 min, residue: 1 % }";
const drawn = "plasticatingRate: { uniform: [80 kg/h, 120 kg/h] }";

function cellOf(rate: string, changes = "", days = 1): ReturnType<typeof scenarioOf> {
  return scenarioOf(
    cellText(2, `${calendar}\n${changes === "" ? "" : `changes: [${changes}]`}`),
    `delivery={ kind: reciprocating-screw, ${rate}, drop: 1.8 s, holdUp: 1.2 kg, manifoldHoldUp: 0.3 kg }`,
    `run.length=${days} d`,
    "run.warmup=auto",
  );
}

function purges(plan: ReturnType<typeof planCell>, replication = 1): number {
  const { stateTimes } = runCell(plan, { replication });
  return stateTimes.find(({ state }) => state === "purging")!.ticks / 1e6;
}

describe("a purge of 2 kg", () => {
  // Mass / rate, with the mass of a shot over its time as the rate, calculated by hand [C]. A shot is 2 × 54.6 g = 109.2 g.
  it("takes 72 s at 100 kg/h, and 2 kg / 109.2 g × 4 s at 4 s a shot", () => {
    expect(purges(planCell(cellOf("plasticatingRate: 100 kg/h")))).toBe(72);
    expect(purges(planCell(cellOf("recharge: 4 s")))).toBeCloseTo((4 * 2) / 0.1092, 6);
  });

  // Mean of 1/x for a uniform x in [a, b]: ln(b/a)/(b − a) [C]. Draws lie between 2 kg at 120 kg/h and 2 kg at 80 kg/h.
  it("draws one rate for the whole mass", () => {
    const plan = planCell(cellOf(drawn, "", 0.26));
    const seconds = Array.from({ length: 300 }, (_, i) => purges(plan, i + 1));
    const { mean, halfWidth } = meanInterval(seconds);
    const expected = (2 * 3600 * Math.log(120 / 80)) / 40;
    expect(Math.abs(mean - expected)).toBeLessThan(1.5 * halfWidth!);
    expect(halfWidth).toBeLessThan(1.1);
    expect(Math.min(...seconds)).toBeGreaterThanOrEqual(60);
    expect(Math.min(...seconds)).toBeLessThan(61);
    expect(Math.max(...seconds)).toBeLessThanOrEqual(90);
    expect(Math.max(...seconds)).toBeGreaterThan(89);
  });

  it("draws a new rate every morning", () => {
    const [one, two] = [cellOf(drawn), cellOf(drawn, "", 2)].map((cell) => purges(planCell(cell))) as [number, number];
    expect(two - one).toBeGreaterThan(60);
    expect(two - one).not.toBeCloseTo(one, 3);
  });
});

describe("the stream of a purge", () => {
  const durations = (changes: string, step: string): readonly number[] => {
    const plan = planCell(cellOf(drawn, changes));
    const steps = simulatedSteps(plan, 14 * 3600e6);
    return steps.filter((each) => each.step === step).map(({ start, end }) => end - start);
  };

  it("leaves the stream of the recharge unchanged: the n-th recharge takes the same time with and without a purge", () => {
    const [plain, changed] = [durations("", "recharge"), durations(blue, "recharge")];
    expect(changed.length).toBeGreaterThan(3000);
    expect(changed.length).toBeLessThan(plain.length);
    expect(plain.slice(0, changed.length)).toEqual(changed);
  });

  it("is separate for each purge: another change does not alter its time", () => {
    const [start, toBlue, toGreen] = durations(`${blue}, ${green}`, "purge");
    expect(durations("", "purge")).toEqual([start]);
    expect(durations(blue, "purge")).toEqual([start, toBlue]);
    expect(durations(green, "purge")).toEqual([start, toGreen]);
    expect(toBlue).not.toBe(toGreen);
  });
});
