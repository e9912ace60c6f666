// Holds rejects to the normal distribution and mold times to timelines calculated by hand, and checks that streams are independent.
import normalCdf from "@stdlib/stats-base-dists-normal-cdf";
import { describe, expect, it } from "vitest";
import type { CellRecord } from "#cell/records/cellRecord.ts";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";

function judged(quality: string, ...set: readonly string[]): Scenario {
  return scenarioOf(cellText(2, `quality: ${quality}`), "run.length=200 h", "run.warmup=0 s", ...set);
}

const run = (scenario: Scenario, replication = 1): CellRecord => runCell(planCell(scenario), { replication });

function counted(record: CellRecord): { readonly parts: number; readonly of: (reason: string) => number } {
  const parts = record.stations.reduce((sum, station) => sum + station.parts, 0);
  const all = record.stations.flatMap(({ rejects }) => rejects);
  return { parts, of: (reason) => all.reduce((sum, each) => sum + (each.reason === reason ? each.parts : 0), 0) };
}

/** Twice the half-width of a 99.9 % interval of a binomial count, since the parts of a shot are correlated. */
const margin = (parts: number, share: number): number => 2 * 3.29 * Math.sqrt(parts * share * (1 - share));

describe("masses", () => {
  // Shares outside the limits: @stdlib's normal distribution function with sd √(shot² + cavity²) [C].
  const sd = 42 * Math.hypot(0.01, 0.006);
  const record = run(judged("{ lightest: 41.7 g, heaviest: 42.4 g, shotSpread: 1 %, cavitySpread: 0.6 % }"));
  const { parts, of } = counted(record);

  it.each([
    ["too light", normalCdf(41.7, 42, sd)],
    ["too heavy", 1 - normalCdf(42.4, 42, sd)],
  ])("are %s as often as the normal distribution predicts", (reason, share) => {
    expect(parts).toBeGreaterThan(100_000);
    expect(share).toBeGreaterThan(0.01);
    expect(Math.abs(of(reason) - parts * share)).toBeLessThan(margin(parts, share));
    expect(margin(parts, share) / (parts * share)).toBeLessThan(0.05);
  });

  it("are equal in the cavities of a shot that varies as a whole, and differ with the cavities' spread", () => {
    // When only the shot varies, both of its parts are light or neither is: the count is even at every station.
    const together = run(judged("{ lightest: 41.8 g, shotSpread: 1 % }"));
    for (const { rejects } of together.stations) expect(rejects[0]!.parts % 2).toBe(0);
    const apart = run(judged("{ lightest: 41.8 g, cavitySpread: 1 % }"));
    const light = counted(apart).of("too light");
    expect(Math.abs(light - counted(apart).parts * normalCdf(41.8, 42, 0.42))).toBeLessThan(margin(parts, 0.317));
  });
});

describe("the base share", () => {
  it("rejects that share of the parts", () => {
    const { parts, of } = counted(run(judged("{ rejects: 3 % }")));
    expect(Math.abs(of("base share") - 0.03 * parts)).toBeLessThan(margin(parts, 0.03));
    expect(margin(parts, 0.03) / (0.03 * parts)).toBeLessThan(0.13);
  });
});

describe("streams", () => {
  const base = "lightest: 41.2 g, shotSpread: 1 %, cavitySpread: 0.6 %";
  const light = (quality: string, ...set: readonly string[]): readonly (number | undefined)[] =>
    run(judged(quality, ...set)).stations.map(
      ({ rejects }) => rejects.find(({ reason }) => reason === "too light")?.parts,
    );

  it("of masses do not change with a base share: a rejected part still draws its mass", () => {
    const [alone, both] = [light(`{ ${base} }`), light(`{ ${base}, rejects: 5 % }`)];
    both.forEach((found, k) => {
      // 5 % of the light parts count as base rejects. With other draws the two counts would also differ at random.
      expect(found! / alone[k]!).toBeGreaterThan(0.93);
      expect(found! / alone[k]!).toBeLessThan(0.97);
    });
  });

  it("of steps do not change with quality checks: shots come at the same ticks with and without them", () => {
    const plain = scenarioOf(cellText(2), "run.warmup=0 s", "stations.steps.cool={ triangular: [7 s, 7.5 s, 9 s] }");
    const weighed = { ...plain, quality: judged(`{ ${base}, rejects: 5 % }`).quality! };
    expect(run(weighed).stations.map(({ shotTicks }) => shotTicks)).toEqual(
      run(plain).stations.map(({ shotTicks }) => shotTicks),
    );
  });

  it("of masses do not change with a limit on the time in the mold", () => {
    const timed = run({ ...judged(`{ ${base} }`), maxInMold: 3600 });
    expect(timed.stations.map(({ rejects }) => rejects[0])).toEqual(
      run(judged(`{ ${base} }`)).stations.map(({ rejects }) => rejects[0]),
    );
  });
});

describe("the limit on the time in the mold", () => {
  // Without stops a mold is closed for 0.5 + 8 + 0.5 + 0.6 = 9.6 s a cycle.
  it.each([
    ["9.59 s", 1],
    ["9.61 s", 0],
  ])("of %s rejects all parts or none", (limit, share) => {
    const { parts, of } = counted(run(scenarioOf(cellText(1, `maxInMold: ${limit}`), "run.warmup=0 s")));
    expect(of("too long in the mold")).toBe(share * parts);
    expect(parts).toBeGreaterThan(100);
  });

  it("rejects the parts of a shot that a stop keeps in the mold, and no others", () => {
    // The station stops for 30 s about every 300 s. Each stop makes at most one shot late.
    const stops =
      "stops: [{ name: hose, resource: station 1, clock: calendar, between: { exponential: 300 s }, repair: 30 s, step: finish }]";
    const record = run(scenarioOf(cellText(1, `maxInMold: 15 s\n${stops}`), "run.warmup=0 s"));
    const { of } = counted(record);
    const late = of("too long in the mold") / 2;
    expect(late).toBeGreaterThan(5);
    expect(late).toBeLessThanOrEqual(record.stops.length);
  });
});

describe("a parison", () => {
  const stops =
    "stops: [{ name: hose, resource: station 1, clock: calendar, between: { exponential: 100 s }, repair: 30 s, step: finish }]";
  const lost = (limit: string): number =>
    run(
      scenarioOf(
        cellText(1, `maxHang: ${limit}\n${stops}`),
        "run.warmup=0 s",
        "run.length=20 h",
        "stations.steps.clear={ time: 20 s }",
      ),
    ).stations[0]!.lostShots;

  it("is lost only when a stop lasts longer than its limit of hang time", () => {
    expect(lost("10 s")).toBeGreaterThan(10);
    expect(lost("31 s")).toBe(0);
  });
});
