// The result of a choice, by hand, with observations that are written down.
import { describe, expect, it } from "vitest";
import type { Course } from "#analysis/choice/choice.ts";
import { concludeChoice } from "#analysis/choice/concludeChoice.ts";
import { costStudy } from "#analysis/indicators/costStudy.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { oneStation } from "../../support/madeOrder.ts";
import { answerMade } from "../../support/madeAnswers.ts";
import { around, choiceOf, courseOf, seen, type MadeCourse } from "./madeChoice.ts";

const need = { parts: 100, within: 3600, chance: 0.5 };
const meeting = (value: number, isMet: boolean, count = 20) =>
  Array.from({ length: count }, () => seen(value, { met: isMet }));

describe("the ranking of a choice", () => {
  const chosen = () =>
    concludeChoice(
      choiceOf([
        courseOf("poor", around(80, 1)),
        courseOf("stuck", [], { leftOut: "It stands still." }),
        courseOf("near", around(100, -3, 40)),
        courseOf("poorer", around(70, 1)),
        courseOf("good", around(101, 3, 30)),
      ]),
    );

  it("has the chosen layout first, then the others by their means, and what was left out", () => {
    const choice = chosen();
    expect([choice.verdict, choice.worthwhile, choice.base]).toEqual(["undecided", 2, "poor"]);
    expect(choice.ranking.map(({ layout, verdict }) => [layout.scenario.name, verdict])).toEqual([
      ["good", "not decided"],
      ["near", "not decided"],
      ["poor", "dropped"],
      ["poorer", "dropped"],
      ["stuck", "left out"],
    ]);
    expect(choice.replications).toBe(110);
    expect(choice.zone).toBeNull();
    // Two are dropped after 20 replications; the selection has used 30 of the others.
    expect(choice.spent).toMatchObject({ used: 20 + 20 + 30 + 30, layouts: 4 });
  });

  it("says how far each layout is behind the first one, and which one dropped it", () => {
    const [good, near, poor, , stuck] = chosen().ranking;
    expect([good?.behind, good?.isWithin]).toEqual([null, null]);
    // By hand: leads of 7 and −5 in turn: mean 1, sd 6 √(30/29); t(1 − 0.05/8, 29) = 2.6632 for four comparisons.
    expect(near?.behind?.mean).toBeCloseTo(1, 12);
    expect(near?.behind?.halfWidth).toBeCloseTo((2.6632 * 6) / Math.sqrt(29), 3);
    expect(near?.isWithin).toBe(false);
    expect(poor?.dropped).toEqual({ at: 20, by: "good" });
    expect(poor?.behind?.mean).toBeCloseTo(21, 12);
    expect([stuck?.behind, stuck?.isWithin, stuck?.value, stuck?.leftOut]).toEqual([
      null,
      null,
      null,
      "It stands still.",
    ]);
    expect(near?.dropped).toBeNull();
  });

  it("has intervals that hold for all layouts at once", () => {
    const [good] = chosen().ranking;
    // [C] t(1 − 0.05/10, 29) = 2.7564 for five layouts; sd 3 √(30/29).
    expect(good?.value).toMatchObject({ count: 30, mean: 101 });
    expect(good?.value?.halfWidth).toBeCloseTo((2.7564 * 3) / Math.sqrt(29), 3);
    expect(good?.goodParts?.halfWidth).toBeCloseTo(good!.value!.halfWidth!, 12);
    expect([good?.costPerHour, good?.costPerThousand]).toEqual([null, null]);
  });

  it("names the best and its equals once all are tested", () => {
    const same = concludeChoice(
      choiceOf([courseOf("b", around(99, 0)), courseOf("a", around(101.5, 0)), courseOf("c", around(101.5, 0))]),
    );
    expect(same.ranking.map(({ layout, verdict, isWithin }) => [layout.scenario.name, verdict, isWithin])).toEqual([
      ["a", "best", null],
      ["c", "equal to the best", true],
      ["b", "dropped", false],
    ]);
    expect([same.verdict, same.spent]).toEqual(["chosen", { used: 60, layouts: 3, each: 20 }]);
  });

  it("takes less for better where the criterion does", () => {
    const criterion = { resource: "cell", measure: "cost per hour", unit: "EUR", better: "less" } as const;
    const cheap = concludeChoice(
      choiceOf([courseOf("dear", around(50, 0)), courseOf("cheap", around(40, 0))], { criterion }),
    );
    expect(cheap.ranking.map(({ layout }) => layout.scenario.name)).toEqual(["cheap", "dear"]);
    expect(cheap.ranking[1]?.behind?.mean).toBe(10);
  });

  it("ranks what is open by the criterion as well", () => {
    const criterion = { resource: "cell", measure: "cost per hour", unit: "EUR", better: "less" } as const;
    const open = choiceOf([courseOf("dear", around(101, 3)), courseOf("cheap", around(100, -3))], { criterion });
    expect(concludeChoice(open).ranking.map(({ layout, verdict }) => [layout.scenario.name, verdict])).toEqual([
      ["cheap", "not decided"],
      ["dear", "not decided"],
    ]);
  });

  it("takes a worthwhile share of the first layout that can be chosen", () => {
    const worthwhile = { by: "share", value: 0.1 } as const;
    const out = courseOf("out", [], { leftOut: "It stands still." });
    const first = courseOf("first", [seen(1000), ...around(100, 0, 19)]);
    const choice = concludeChoice(choiceOf([out, first, courseOf("next", around(500, 0))], { worthwhile }));
    // By hand: a tenth of (1,000 + 19 × 100) / 20 = 145, to two digits 15.
    expect([choice.base, choice.worthwhile]).toEqual(["first", 15]);
    const idle = courseOf("idle", around(0, 0));
    expect(concludeChoice(choiceOf([idle, first], { worthwhile })).base).toBe("first");
    expect(concludeChoice(choiceOf([out, out], { need }))).toMatchObject({ base: "out", verdict: "none", zone: null });
  });

  it("names the stops that are too rare in the runs of each layout", () => {
    const comes = { by: "calendar", between: { kind: "fixed", value: 3600 } } as const;
    const rest = { start: "running", by: "itself", shift: "any", step: "finish" } as const;
    const jam = { name: "jam", resource: "side 1", comes, repair: { kind: "fixed", value: 60 }, ...rest } as const;
    const course = courseOf("a", [seen(5, { stops: { exposures: [{ clock: 3600, repairSeconds: 0 }] as never } })]);
    const stopped = { ...course, layout: { ...course.layout, scenario: { ...course.layout.scenario, stops: [jam] } } };
    const { rareStops } = concludeChoice(choiceOf([stopped, courseOf("b", []), courseOf("c", [seen(4)])]));
    expect(rareStops.map(({ stops, isControlled }) => [stops, isControlled])).toEqual([
      [[{ name: "jam", seen: 0 }], false],
    ]);
  });

  it("has nothing to select of one layout", () => {
    const { verdict, spent, simpler } = concludeChoice(choiceOf([courseOf("a", around(5, 1))]));
    expect([verdict, spent, simpler]).toEqual(["chosen", null, null]);
  });
});

describe("a need", () => {
  it("bars a layout that cannot meet it, whatever its mean", () => {
    const choice = concludeChoice(
      choiceOf(
        [
          courseOf("most", meeting(120, false)),
          courseOf("able", meeting(110, true)),
          courseOf("less", meeting(100, true)),
        ],
        { need },
      ),
    );
    expect(
      choice.ranking.map(({ layout, verdict, need: found }) => [layout.scenario.name, verdict, found?.kind]),
    ).toEqual([
      ["able", "best", "kept"],
      ["less", "dropped", "kept"],
      ["most", "cannot meet the need", "dropped"],
    ]);
    expect([choice.verdict, choice.spent?.layouts]).toEqual(["chosen", 2]);
    expect(choice.ranking[2]?.isWithin).toBeNull();
    // By hand: odds of 1 from half to double.
    expect(choice.zone?.low).toBeCloseTo(1 / 3, 12);
    expect(choice.zone?.high).toBeCloseTo(2 / 3, 12);
  });

  it("may be met by none, or be open", () => {
    const none = concludeChoice(
      choiceOf([courseOf("a", meeting(120, false)), courseOf("b", meeting(110, false))], { need }),
    );
    expect([none.verdict, none.simpler, none.spent]).toEqual(["none", null, null]);
    const half = Array.from({ length: 20 }, (_, i) => seen(120, { met: i % 2 === 0 }));
    const open = concludeChoice(choiceOf([courseOf("a", half), courseOf("b", meeting(10, true))], { need }));
    expect([open.verdict, open.ranking.map(({ verdict }) => verdict)]).toEqual([
      "undecided",
      ["not decided", "dropped"],
    ]);
  });
});

describe("the next simpler layout", () => {
  const withPlants = (...courses: readonly Course[]) => concludeChoice(choiceOf(courses)).simpler;

  it("has the largest investment below that of the first", () => {
    const found = withPlants(
      courseOf("first", around(120, 1), { investment: 500 }),
      courseOf("same", around(110, 1), { investment: 500 }),
      courseOf("cheapest", around(100, 1), { investment: 100 }),
      courseOf("cheap", around(90, 1), { investment: 400 }),
      courseOf("unknown", around(90, 1)),
      courseOf("out", [], { investment: 450, leftOut: "It stands still." }),
    );
    expect(found).toMatchObject({ by: "investment", saved: 100, partsLost: { count: 20, mean: 30 } });
    expect(found?.ranked.layout.scenario.name).toBe("cheap");
    const spread = withPlants(
      courseOf("first", around(120, 3), { investment: 500 }),
      courseOf("cheap", around(90, -3, 40), { investment: 400 }),
    );
    // By hand: losses of 36 and 24 in turn; t(0.975, 19) = 2.0930 for this one comparison.
    expect(spread?.partsLost).toMatchObject({ count: 20, mean: 30 });
    expect(spread?.partsLost.halfWidth).toBeCloseTo((2.093 * 6) / Math.sqrt(19), 3);
  });

  it("has the most stations below its number without investments", () => {
    const found = withPlants(
      courseOf("one", around(60, 1), { stations: 1 }),
      courseOf("four", around(120, 1), { stations: 4 }),
      courseOf("two", around(100, 1), { stations: 2 }),
      courseOf("another two", around(99, 1), { stations: 2 }),
    );
    expect(found).toMatchObject({ by: "stations", saved: 2, partsLost: { mean: 20 } });
    expect(found?.ranked.layout.scenario.name).toBe("two");
    expect(
      withPlants(courseOf("a", around(9, 1), { stations: 2 }), courseOf("b", around(5, 1), { stations: 2 })),
    ).toBeNull();
  });

  it("is one that can meet the need", () => {
    const { simpler } = concludeChoice(
      choiceOf(
        [
          courseOf("large", meeting(120, true), { stations: 3 }),
          courseOf("middle", meeting(90, false), { stations: 2 }),
          courseOf("small", meeting(100, true), { stations: 1 }),
        ],
        { need },
      ),
    );
    expect(simpler?.ranked.layout.scenario.name).toBe("small");
  });
});

describe("costs and output", () => {
  const costs = { currency: "EUR", machine: 1 } as const;
  const priced: Scenario = { ...oneStation, costs };
  const known = costStudy(priced, [answerMade(1, { "good parts per hour": 5 }, { elementTimes: [] })], []);
  const other = costStudy(
    { ...priced, costs: { ...costs, packing: 1 } },
    [answerMade(1, { "good parts per hour": 5 })],
    [],
  );
  const of = (name: string, parts: number, perHour: number, more: MadeCourse = {}, count = 20) =>
    courseOf(
      name,
      Array.from({ length: count }, () =>
        seen(parts, { costPerHour: perHour, costPerThousand: (1000 * perHour) / parts }),
      ),
      { costs: known, ...more },
    );

  it("are shown where all layouts have the same items", () => {
    const [first] = concludeChoice(choiceOf([of("a", 100, 30), of("b", 90, 20)])).ranking;
    expect([first?.costPerHour?.mean, first?.costPerThousand?.mean]).toEqual([30, 300]);
    const differing = concludeChoice(choiceOf([of("a", 100, 30), of("b", 90, 20, { costs: other })])).ranking;
    expect(
      differing.map(({ costPerHour, costPerThousand, efficiency }) => [
        costPerHour,
        costPerThousand,
        efficiency.perHour,
      ]),
    ).toEqual([
      [null, null, null],
      [null, null, null],
    ]);
    const partly = concludeChoice(
      choiceOf([of("a", 100, 30), courseOf("b", [...around(90, 1, 19), seen(90)], { costs: known })]),
    );
    expect(partly.ranking[1]?.costPerHour).toBeNull();
  });

  it("make a layout efficient that no other one beats in both", () => {
    const { ranking } = concludeChoice(
      choiceOf([
        of("large", 100, 30, { investment: 900 }),
        // More replications are no more parts.
        of("dear", 90, 40, { investment: 100 }, 40),
        of("small", 80, 10, { investment: 500 }),
        courseOf("out", [], { costs: known, leftOut: "It stands still." }),
      ]),
    );
    expect(
      ranking.map(({ layout, efficiency }) => [layout.scenario.name, efficiency.perHour, efficiency.investment]),
    ).toEqual([
      ["large", true, true],
      ["dear", false, true],
      ["small", true, false],
      ["out", null, null],
    ]);
  });
});
