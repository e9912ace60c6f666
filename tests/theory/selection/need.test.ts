// Holds the screening for a need to its share of the error, alone and with the selection that follows it.
import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import seedrandom from "seedrandom";
import { describe, expect, it } from "vitest";
import { feasibility, needShare, type NeedGoal, type NeedVerdict } from "#analysis/selection/feasibility.ts";
import { kimNelson, type Selection, type SelectionGoal } from "#analysis/selection/kimNelson.ts";
import { isLong } from "../../support/caseCount.ts";
import { normalFrom } from "../../support/draws/normalFrom.ts";

const need: NeedGoal = { chance: 0.95, errorShare: 0.025, mostReplications: 10_000 };
const studies = isLong ? 10_000 : 1000;

const kinds = ({ verdicts }: { readonly verdicts: readonly NeedVerdict[] }): readonly string[] =>
  verdicts.map(({ kind }) => kind);
const runs = (met: number, missed: number): boolean[] => [
  ...Array.from({ length: met }, () => true),
  ...Array.from({ length: missed }, () => false),
];

describe("the screening for a need", () => {
  it("has a zone from half of the odds to double", () => {
    // Odds 19 for 95 %: 9.5/10.5 and 38/39 [C].
    const { zone } = feasibility([[]], need);
    expect(zone.low).toBeCloseTo(9.5 / 10.5, 12);
    expect(zone.high).toBeCloseTo(38 / 39, 12);
  });

  it("decides one layout at the numbers of runs that Wald's bounds give", () => {
    // 40 = 1/0.025: ln 40 / ln((38/39)/(9.5/10.5)) = 49.8 runs that meet it, ln 40 / ln((1/10.5)/(1/39)) = 2.8 that do not [C].
    expect(kinds(feasibility([runs(49, 0)], need))).toEqual(["open"]);
    expect(feasibility([runs(80, 0)], need).verdicts).toEqual([{ kind: "kept", replications: 50, met: 50 }]);
    expect(kinds(feasibility([runs(0, 2)], need))).toEqual(["open"]);
    expect(feasibility([runs(0, 9)], need).verdicts).toEqual([{ kind: "dropped", replications: 3, met: 0 }]);
    expect(feasibility([[]], need).more).toBe(50);
    expect(feasibility([runs(0, 2)], need).more).toBe(1);
  });

  it("decides at the bound itself", () => {
    // Chance 1/2: the ratio doubles with a run that meets the need and halves with another. Two layouts share 0.25: bounds 8, 1/8 [C].
    const even = { chance: 0.5, errorShare: 0.25, mostReplications: 100 };
    const { verdicts, more } = feasibility([runs(3, 0), runs(2, 0)], even);
    expect(verdicts[0]).toEqual({ kind: "kept", replications: 3, met: 3 });
    expect(verdicts[1]).toEqual({ kind: "open", replications: 2, met: 2 });
    expect(more).toBe(1);
    expect(feasibility([runs(0, 3), runs(0, 2)], even).verdicts[0]).toEqual({
      kind: "dropped",
      replications: 3,
      met: 0,
    });
  });

  it("divides the share among the layouts, so that more layouts take more runs", () => {
    // ln 200 / ln 1.07692 = 71.5 [C].
    const five = Array.from({ length: 5 }, () => runs(80, 0));
    expect(feasibility(five, need).verdicts[0]).toEqual({ kind: "kept", replications: 72, met: 72 });
  });

  it("leaves a layout undecided at the cap", () => {
    const { verdicts, more } = feasibility([runs(10, 0), runs(4, 0)], { ...need, mostReplications: 10 });
    expect(verdicts.map(({ kind }) => kind)).toEqual(["undecided", "open"]);
    expect(more).toBe(6);
  });
});

/** The share of studies with any wrong decision. */
function wrongStudies(chances: readonly number[], expected: readonly string[]): number {
  const uniform = seedrandom.alea(JSON.stringify(chances));
  let wrong = 0;
  for (let study = 0; study < studies; study++) {
    const outcomes: readonly boolean[][] = chances.map(() => []);
    let found = feasibility(outcomes, need);
    for (; found.more > 0; found = feasibility(outcomes, need)) {
      for (const [layout, chance] of chances.entries()) {
        for (let i = 0; i < found.more; i++) outcomes[layout]!.push(uniform() < chance);
      }
    }
    wrong += kinds(found).some((kind, layout) => kind !== expected[layout]) ? 1 : 0;
  }
  return wrong / studies;
}

const { zone } = feasibility([[]], need);
const five = <Value>(value: Value): Value[] => Array.from({ length: 5 }, () => value);

// The bound on the error is exact for independent runs: Wald 1945, and Ville's inequality [M].
describe("the errors of the screening stay within their share", () => {
  it.each<[string, readonly number[], readonly string[]]>([
    ["with all layouts at the high end of the zone", five(zone.high), five("kept")],
    ["with all layouts at the low end of the zone", five(zone.low), five("dropped")],
    [
      "with layouts at both ends, and one that always meets the need",
      [zone.high, zone.low, zone.high, zone.low, 1],
      ["kept", "dropped", "kept", "dropped", "kept"],
    ],
  ])("%s", (_name, chances, expected) => {
    const wrong = wrongStudies(chances, expected);
    expect(wrong).toBeLessThanOrEqual(need.errorShare);
    expect(wrong).toBeGreaterThan(0.2 * need.errorShare);
  });
});

describe("the selection among the layouts that meet a need", () => {
  const confidence = 0.95;
  const goal: SelectionGoal = {
    better: "less",
    worthwhile: 1,
    confidence: 1 - (1 - needShare) * (1 - confidence),
    firstReplications: 10,
    mostReplications: 10_000,
  };
  const screening: NeedGoal = { ...need, errorShare: needShare * (1 - confidence) };
  /** The cheapest cannot meet the need, and the second is exactly the worthwhile difference ahead of the others. */
  const layouts = [
    { cost: 0, chance: zone.low },
    { cost: 2, chance: zone.high },
    { cost: 1, chance: zone.high },
    { cost: 2, chance: zone.high },
    { cost: 2, chance: 0.9999 },
  ];

  /** Costs and parts of one run of every layout, which share random numbers; more parts cost less. */
  function drawn(normal: () => number): readonly { readonly cost: number; readonly meets: boolean }[] {
    const shared = normal();
    return layouts.map(({ cost, chance }) => {
      const parts = 0.8 * shared + 0.6 * normal();
      return { cost: cost - 2 * parts + 2 * normal(), meets: parts < normalQuantile(chance, 0, 1) };
    });
  }

  function studied(normal: () => number): Selection {
    const runsMade: (readonly { readonly cost: number; readonly meets: boolean }[])[] = [];
    const add = (count: number): void => {
      for (let i = 0; i < count; i++) runsMade.push(drawn(normal));
    };
    const screened = () =>
      feasibility(
        layouts.map((_, layout) => runsMade.map((run) => run[layout]!.meets)),
        screening,
      );
    let found = screened();
    for (; found.more > 0; found = screened()) add(found.more);
    const barred = found.verdicts.flatMap(({ kind }, layout) => (kind === "dropped" ? [layout] : []));
    const selected = () =>
      kimNelson(
        layouts.map((_, layout) => runsMade.map((run) => run[layout]!.cost)),
        goal,
        barred,
      );
    let selection = selected();
    for (; selection.kind === "running"; selection = selected()) add(selection.more);
    return selection;
  }

  it("is right in 95 % of the studies, with the same replications for both", () => {
    const normal = normalFrom("need and selection");
    const count = studies / 2;
    const correct = Array.from({ length: count }, () => studied(normal)).filter(
      (found) => found.kind === "selected" && found.layout === 2,
    );
    expect(correct.length / count).toBeGreaterThanOrEqual(confidence);
  });
});
