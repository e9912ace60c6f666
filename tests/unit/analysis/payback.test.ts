// Holds the payback of a layout to values calculated by hand.
import { describe, expect, it } from "vitest";
import { paybacks, type Payback } from "#analysis/study/payback.ts";
import { runStudy, type Study } from "#analysis/study/study.ts";
import { paybackCell, paybackSentence } from "#report/words/paybackWords.ts";
import { paybackTables } from "#report/tables/paybackTable.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";

// 13.05 s a shot of each station, computed independently of this project [C]: 100 whole cycles without a warm-up of random length.
const cycle = 13.05;
const run = [`run.length=${cycle * 150} s`, `run.warmup=${cycle * 50} s`];

function studyOf(name: string, stations: number, costs: string): Study {
  const scenario = scenarioOf(cellText(stations, `costs: ${costs}\n`), ...run);
  const outcome = runStudy({ ...scenario, name });
  if (outcome.kind === "stuck") throw new Error(outcome.issue.message);
  return outcome.study;
}

const rates = (more = ""): string => `{ currency: EUR, machine: 40 per h, station: 5 per h${more} }`;
const goodPerHour = (stations: number): number => (stations * 2 * 3600) / cycle;

function paybackOf(one: string, two: string): Payback | undefined {
  return paybacks([[studyOf("one", 1, rates(one)), studyOf("two", 2, rates(two))]])[0];
}

describe("the payback of a second station", () => {
  it("without a price counts the lower cost of the parts that both make", () => {
    const found = paybackOf(", investment: 300000", ", investment: 360000");
    // Costs an hour: 40 + 5 = 45 and 40 + 10 = 50. Twice the parts: the base's parts cost 25 instead of 45. 60,000 / 20 = 3,000 h.
    expect(found).toMatchObject({ rule: "saving", extraInvestment: 60000, verdict: "pays back", currency: "EUR" });
    expect(found?.gain).toBeCloseTo(20, 9);
    expect(found?.hours).toBeCloseTo(3000, 6);
    expect(paybackCell(found)).toBe("3,000 h");
    expect(paybackSentence(found!)).toBe(
      "two pays back 60,000 EUR more investment than one in 3,000 h, 17.9 weeks of 168 h: it gains 20 EUR an hour.",
    );
  });

  it("with a price counts margin", () => {
    const price = ", price: 0.10 per part";
    const found = paybackOf(price, `${price}, investment: 60000`);
    // 0.10 × 551.72 − 45 = 10.17 becomes 0.10 × 1,103.45 − 50 = 60.34; the base gives no investment.
    const gain = 0.1 * (goodPerHour(2) - goodPerHour(1)) - 5;
    expect(found).toMatchObject({ rule: "margin", extraInvestment: 60000 });
    expect(found?.gain).toBeCloseTo(gain, 6);
    expect(found?.hours).toBeCloseTo(60000 / 50.172414, 2);
  });

  it("never comes where the layout costs more than it brings", () => {
    const price = ", price: 0.001 per part";
    const found = paybackOf(price, `${price}, investment: 60000`);
    // 0.001 × 551.72 − 5 an hour.
    expect(found?.gain).toBeCloseTo(0.55172414 - 5, 6);
    expect(found).toMatchObject({ verdict: "no payback", hours: null, shortest: null, longest: null });
    expect(paybackSentence(found!)).toMatch(/^two never pays back 60,000 EUR .* it loses 4\.448 EUR an hour\.$/u);
  });

  it("has nothing to pay back where it costs no more to buy", () => {
    const found = paybackOf(", investment: 60000", ", investment: 50000");
    expect(found).toMatchObject({ verdict: "nothing to pay back", extraInvestment: -10000, hours: null });
  });

  it("is left out without an investment, or where the costs have different items", () => {
    expect(paybackOf(", investment: 60000", "")).toBeUndefined();
    expect(paybackOf("", ", heating: 2 per h, investment: 60000")).toBeUndefined();
    expect(paybackTables([])).toEqual([]);
  });
});

describe("the gain of a payback", () => {
  /** Two replications with these costs an hour, at the same output. */
  function withCosts(name: string, perHour: readonly number[], investment: number): Study {
    const study = studyOf(name, 1, rates(`, price: 1 per part, investment: ${investment}`));
    const pair = study.measures.map((row) => ({ ...row, values: row.values.slice(0, 2) }));
    return { ...study, measures: pair, costs: { ...study.costs!, perHourOf: perHour } };
  }

  it("has an interval from paired replications, and the payback its ends", () => {
    const [found] = paybacks([[withCosts("one", [100, 110], 0), withCosts("two", [89, 101], 1000)]]);
    // Gains 11 and 9: mean 10, standard error 1, t(0.975, 1) = 12.7062 [M].
    expect(found?.gain).toBeCloseTo(10, 9);
    expect(found?.halfWidth).toBeCloseTo(12.7062, 3);
    expect(found?.shortest).toBeCloseTo(1000 / 22.7062, 3);
    expect(found).toMatchObject({ verdict: "no gain seen", hours: null, longest: null });
    const [sure] = paybacks([[withCosts("one", [100, 110], 0), withCosts("two", [80, 90.1], 1000)]]);
    // Gains 20 and 19.9: 19.95 ± 0.05 × 12.7062.
    expect(sure?.hours).toBeCloseTo(1000 / 19.95, 6);
    expect(sure?.longest).toBeCloseTo(1000 / (19.95 - 0.63531), 3);
  });

  it("has no interval from one replication", () => {
    const study = studyOf("two", 1, rates(", investment: 9"));
    const single = { ...study, measures: study.measures.map((row) => ({ ...row, values: row.values.slice(0, 1) })) };
    const cheap = { ...single, costs: { ...study.costs!, perThousandOf: [50] } };
    const [found] = paybacks([[{ ...single, scenario: { ...single.scenario, costs: { currency: "EUR" } } }, cheap]]);
    expect(found).toMatchObject({ verdict: "one pair, no interval", halfWidth: null, longest: null });
  });
});
