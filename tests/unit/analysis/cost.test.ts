// Holds the costs of a cell of fixed times to values calculated by hand, and missing inputs to rows left out.
import { describe, expect, it } from "vitest";
import { compareStudies } from "#analysis/study/comparison.ts";
import { COST_MEASURE, type CostStudy } from "#analysis/indicators/costStudy.ts";
import { runStudy, type Study } from "#analysis/study/study.ts";
import { compareAnswer } from "#report/answers/compareAnswer.ts";
import { costTables } from "#report/tables/costTable.ts";
import { toCsv } from "#report/tables/csv.ts";
import { runAnswer } from "#report/answers/runAnswer.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";

const costs = `costs:
  currency: Taler
  resin: 1.40 per kg
  regrindCredit: 0.50 per kg
  energy: 0.18 per kWh
  heating: 1.50 per h
  air: 0.02 per m³
  cooling: 0.03 per kg
  operator: 20 per h
  machine: 40 per h
  tooling: { price: 30000, life: 3000000 parts }
  packing: 12 per 1000 parts
crew: { operators: 2 }
`;

/** 13.05 s a shot of two parts, 42 g and 12.6 g of flash each; 10 shots of warm-up, 100 observed. */
const fixedTimes = [
  "product={ material: HDPE, partMass: 42 g, flash: 30 % of part, volume: 1 L, blowPressure: 6 bar }",
  "delivery={ kind: reciprocating-screw, plasticatingRate: 110 kg/h, drop: 1.8 s, drivePower: 22 kW }",
  "run.warmup=130.5 s",
  "run.length=1435.5 s",
];

function studyOf(text: string, ...set: readonly string[]): Study {
  const outcome = runStudy(scenarioOf(text, ...fixedTimes, ...set));
  if (outcome.kind === "stuck") throw new Error(outcome.issue.message);
  return outcome.study;
}

function costsOf({ costs: found }: Study): CostStudy {
  if (!found) throw new Error("no costs");
  return found;
}

const study = studyOf(cellText(1, costs));

// By hand [C]: 3600/13.05 × 2 = 551.72 parts an hour, so a thousand parts take 1.8125 h and 54.6 kg of melt.
const perThousand: readonly (readonly [item: string, amount: number])[] = [
  ["resin", 76.44], // 54.6 kg × 1.40; without regrind all flash is bought
  ["surplus regrind", -6.3], // 12.6 kg of flash × 0.50
  ["drive energy", 1.9656], // 22 kW / 110 kg/h = 0.2 kWh/kg × 54.6 kg × 0.18
  ["heating", 2.71875], // 1.8125 h × 1.50
  ["air", 0.12], // 1 L at 6 bar gauge is 6 L at 1 bar: 6 m³ × 0.02
  ["cooling", 1.638], // 54.6 kg × 0.03
  ["labor", 72.5], // 2 operators × 1.8125 h × 20
  ["machine", 72.5], // 1.8125 h × 40
  ["tooling", 10], // 30,000 / 3,000,000 a part
  ["packing", 12],
];

describe("the cost of a thousand good parts", () => {
  const found = costsOf(study);

  it.each(perThousand)("%s is %d", (item, amount) => {
    expect(found.rows.find((row) => row.item === item)?.perThousand?.mean).toBeCloseTo(amount, 9);
    expect(found.rows.find((row) => row.item === item)?.perHour.mean).toBeCloseTo(amount / 1.8125, 9);
  });

  it("counts each station on top of the machine, and leaves price and investment out", () => {
    const more = costs.replace("  machine", "  price: 1 per part\n  investment: 90000\n  station: 7 per h\n  machine");
    const [one, two] = [1, 2].map((stations) => costsOf(studyOf(cellText(stations, more))));
    // 7 an hour for 1.8125 h; two stations cost 14 an hour.
    expect(one?.rows.find(({ item }) => item === "stations")?.perThousand?.mean).toBeCloseTo(7 * 1.8125, 9);
    expect(two?.rows.find(({ item }) => item === "stations")?.perHour.mean).toBeCloseTo(14, 9);
    expect(one?.total.perThousand?.mean).toBeCloseTo(243.58235 + 7 * 1.8125, 9);
    expect(one?.rows).toHaveLength(perThousand.length + 1);
  });

  it("is 243.58 Taler in all, and has no other row", () => {
    expect(found.currency).toBe("Taler");
    expect(found.rows.map(({ item }) => item)).toEqual(perThousand.map(([item]) => item));
    expect(found.total.perThousand?.mean).toBeCloseTo(243.58235, 9);
    expect(found.missing).toEqual([]);
  });

  it("is exactly the sum of its rows, per hour and per thousand parts, also with drawn times", () => {
    const spread = costsOf(studyOf(cellText(2, costs), "stations.steps.cool={ triangular: [7 s, 8 s, 10 s] }"));
    for (const each of [found, spread]) {
      expect(each.rows.reduce((sum, row) => sum + row.perHour.mean, 0)).toBe(each.total.perHour.mean);
      expect(each.rows.reduce((sum, row) => sum + row.perThousand!.mean, 0)).toBe(each.total.perThousand!.mean);
      expect(each.rows.reduce((sum, row) => sum + row.share!, 0)).toBeCloseTo(1, 12);
    }
    expect(spread.total.perThousand?.halfWidth).toBeGreaterThan(0);
    const meanOfReplications =
      spread.perThousandOf.reduce<number>((sum, each) => sum + (each ?? NaN), 0) / spread.perThousandOf.length;
    expect(meanOfReplications).toBeCloseTo(spread.total.perThousand!.mean, 9);
  });

  it("includes resin and time of rejects: with a fifth of rejects 800 of 1,000 parts are good", () => {
    const rejected = studyOf(cellText(1, costs), "quality={ rejects: 20 % }", "run.length=105 h");
    const good = 1 - rejected.measures.find(({ measure }) => measure === "reject share")!.interval.mean;
    const of = (item: string) => costsOf(rejected).rows.find((row) => row.item === item)?.perThousand?.mean ?? NaN;
    expect(of("machine")).toBeCloseTo(72.5 / good, 1);
    expect(of("packing")).toBeCloseTo(12, 9);
    expect(of("tooling")).toBeCloseTo(10 / good, 2);
    // The flash of all parts and the rejects.
    expect(of("surplus regrind")).toBeCloseTo((-0.5 * (12.6 + 42 * (1 - good))) / good, 2);
  });

  // A tenth of 54.6 kg is regrind: 49.14 kg × 1.40 are bought, and 12.6 − 5.46 = 7.14 kg × 0.50 are sold.
  it("includes less resin with regrind, and a credit for the surplus", () => {
    const { rows } = costsOf(studyOf(cellText(1, costs), "regrind={ limit: 10 % }"));
    expect(rows.find(({ item }) => item === "resin")?.perThousand?.mean).toBeCloseTo(68.796, 5);
    expect(rows.find(({ item }) => item === "surplus regrind")?.perThousand?.mean).toBeCloseTo(-3.57, 5);
  });

  // Half of the parts fail the leak test: each good part comes with its flash and a refused part with flash, 12.6 × 2 + 42 g.
  it("counts parts refused in the takeaway as surplus regrind", () => {
    const line = "takeaway={ leak test: { time: 1 s, rejects: 50 % } }";
    const tested = studyOf(cellText(1, costs), line, "run.length=105 h");
    const share = tested.measures.find(({ measure }) => measure === "reject share")!.interval.mean;
    const sold = costsOf(tested).rows.find(({ item }) => item === "surplus regrind")?.perThousand?.mean ?? NaN;
    expect(sold).toBeCloseTo((-0.5 * (12.6 + 42 * share)) / (1 - share), 1);
  });
});

const day = `calendar: { from: 2026-03-23, shifts: [{ start: "06:00", end: "14:00" }] }
startUp: { afterOff: 6 h, heatUp: 30 min, purge: 3 kg }
`;

describe("a day of one shift", () => {
  const set = ["run.length=24 h", "run.warmup=auto"];
  const { costs: found, measures } = studyOf(cellText(1, costs + day), ...set);
  const perHour = (item: string): number => found?.rows.find((row) => row.item === item)?.perHour.mean ?? NaN;
  const parts = measures.find(({ measure }) => measure === "parts per hour")!.interval.mean;

  // 8 of 24 hours, less the rest of the shift in which no cycle fits, which is below 13.05 s.
  it.each([
    ["machine", 40],
    ["labor", 2 * 20],
    ["heating", 1.5],
  ])("pays for %s only on shift", (item, rate) => {
    expect(perHour(item)).toBeLessThanOrEqual((rate * 8) / 24);
    expect(perHour(item)).toBeGreaterThan((rate * (8 - 13.05 / 3600)) / 24);
  });

  // The purge is 3 kg in 24 h. All other melt is in parts of 42 g with 12.6 g of flash, because the last cycle ends on shift.
  it("buys, melts and sells the purge of the start-up as well", () => {
    const melt = parts * 0.0546 + 3 / 24;
    expect(perHour("resin")).toBeCloseTo(1.4 * melt, 9);
    expect(perHour("drive energy")).toBeCloseTo(0.2 * 0.18 * melt, 9);
    expect(perHour("surplus regrind")).toBeCloseTo(-0.5 * (parts * 0.0126 + 3 / 24), 9);
  });
});

describe("a regrind limit of 0 %", () => {
  const hour = ["run.length=30 h", "run.warmup=1 h"];
  const jam = [
    "stops=[{ name: jam, resource: station 1, between: 20 min, repair: 2 min, step: scrap }]",
    "stations.steps.clear={ time: 90 s, by: operator }",
  ];

  it.each([
    ["rejects", ["quality={ rejects: 20 % }", ...hour]],
    ["shots lost to a stop", [...jam, ...hour]],
    ["a leak test", ["takeaway={ leak test: { time: 1 s, rejects: 30 % } }", ...hour]],
  ])("costs the same as no regrind: %s", (_, set) => {
    const [none, zero] = [[], ["regrind={ limit: 0 % }"]].map((more) =>
      costsOf(studyOf(cellText(1, costs), ...set, ...more)),
    );
    expect(none?.rows).toEqual(zero?.rows);
  });

  // The melt of a lost shot is bought and sold as regrind: purchases are parts, surplus and the shots in the molds.
  it("accounts for all melt: bought = parts + surplus, up to the shots under way at both ends", () => {
    const { costs: found, measures } = studyOf(cellText(1, costs), ...jam, ...hour);
    const of = (item: string): number => found?.rows.find((row) => row.item === item)?.perHour.mean ?? NaN;
    const parts = measures.find(({ measure }) => measure === "parts per hour")!.interval.mean;
    expect(measures.find(({ measure }) => measure === "lost shots per hour")!.interval.mean).toBeGreaterThan(0.5);
    expect(Math.abs(of("resin") / 1.4 - parts * 0.042 + of("surplus regrind") / 0.5)).toBeLessThanOrEqual(0.1092 / 29);
  });
});

describe("continuous extrusion", () => {
  const flow = `format: 1
product: { material: HDPE, partMass: 42 g, flash: 30 % of part }
delivery: { kind: continuous, plasticatingRate: 60 kg/h, rate: fixed, drivePower: 12 kW }
stations: { count: 1, cavities: 2, steps: { travelIn: 0.7 s, close: 0.6 s, cut: 0.2 s, travelOut: 0.7 s, blow: 0.5 s, cool: 8 s, vent: 0.5 s, open: 0.6 s, remove: { time: 0.8 s } } }
run: { length: 2 h, replications: 2, seed: test, warmup: 10 min }
costs: { currency: Taler, resin: 1 per kg, regrindCredit: 0.50 per kg, energy: 0.18 per kWh }
`;

  // All of the 60 kg/h is bought and melted, at 0.2 kWh/kg, with or without a mold to take it.
  it("pays for excess melt", () => {
    const outcome = runStudy(scenarioOf(flow));
    if (outcome.kind === "stuck") throw new Error(outcome.issue.message);
    const { measures } = outcome.study;
    const of = (item: string) => costsOf(outcome.study).rows.find((row) => row.item === item)?.perHour.mean;
    expect(measures.find(({ measure }) => measure === "excess melt")!.interval.mean).toBeGreaterThan(10);
    expect(of("resin")).toBeCloseTo(60, 0);
    expect(of("drive energy")! / of("resin")!).toBeCloseTo(0.2 * 0.18, 9);
    const parts = measures.find(({ measure }) => measure === "parts per hour")!.interval.mean;
    expect(of("surplus regrind")).toBeCloseTo(-0.5 * (60 - parts * 0.042), 1);
  });
});

describe("missing inputs", () => {
  const few = "costs: { currency: Taler, resin: 1.40 per kg, energy: 0.18 per kWh }\n";
  const without = studyOf(cellText(1, few), "delivery={ kind: reciprocating-screw, recharge: 4 s, drop: 1.8 s }");

  it("leave out their rows, with the keys that would give them", () => {
    const { rows, missing } = costsOf(without);
    // Without operators the labor cost is 0, so its rate is not needed.
    expect(rows.map(({ item }) => item)).toEqual(["resin", "labor"]);
    expect(missing).toContainEqual({
      item: "drive energy",
      keys: ["delivery.plasticatingRate", "delivery.drivePower"],
    });
    expect(missing).toContainEqual({ item: "machine", keys: ["costs.machine"] });
    expect(missing.map(({ item }) => item)).not.toContain("surplus regrind");
    // Three keys by name, and as many more as there are.
    const keys = new Set(missing.flatMap((each) => each.keys));
    const [, named = "", more] = /7 more cost rows with (`.*?`) and (\d+) more keys/.exec(
      runAnswer(without).replaceAll(/\s+/gu, " "),
    )!;
    expect(named.split(", ")).toHaveLength(3);
    expect(Number(more)).toBe(keys.size - 3);
  });

  it("leave out table and line when a scenario has no costs", () => {
    const none = studyOf(cellText(1));
    expect(none.costs).toBeNull();
    expect(costTables([none])).toEqual([]);
    expect(runAnswer(none)).not.toContain("Cost");
  });

  it("prevent a comparison of sums of different items", () => {
    const other = { ...study, scenario: { ...study.scenario, name: "other" } };
    const isCost = ({ measure }: { readonly measure: string }) => measure === COST_MEASURE;
    expect(compareStudies(study, [other]).filter(isCost)).toHaveLength(1);
    expect(compareStudies(study, [without]).filter(isCost)).toEqual([]);
    expect(
      compareAnswer({ studies: [study, without], rows: compareStudies(study, [without]), paybacks: [] }),
    ).toContain("have different items and are not compared");
  });
});

describe("the printed costs", () => {
  it("give the total on one line, with the largest items", () => {
    expect(runAnswer(study)).toMatch(/^Cost +243\.6 Taler per 1,000 good parts: resin 31 %, labor 30 %$/m);
  });

  it("give the difference of a comparison", () => {
    const expensive = { ...studyOf(cellText(1, costs), "costs.machine=50 per h") };
    const named = { ...expensive, scenario: { ...expensive.scenario, name: "dearer" } };
    // 10 more per hour for 1.8125 h.
    expect(compareAnswer({ studies: [study, named], rows: compareStudies(study, [named]), paybacks: [] })).toContain(
      "dearer costs 18.13 Taler more per 1,000 good parts than test.",
    );
  });

  it("have no spread for items that are proportional to good parts", () => {
    const { rows } = costsOf(studyOf(cellText(2, costs), "stations.steps.cool={ triangular: [7 s, 8 s, 10 s] }"));
    for (const item of ["packing", "tooling", "air", "surplus regrind"]) {
      expect(rows.find((row) => row.item === item)?.perThousand?.halfWidth).toBe(0);
    }
  });

  it("end each scenario with its total", () => {
    const lines = toCsv(costTables([study])[0]!)
      .trim()
      .split("\r\n");
    expect(lines.at(-1)).toMatch(/^test,total,Taler,134\.3902621,[^,]*,243\.58235,[^,]*,1$/);
  });
});
