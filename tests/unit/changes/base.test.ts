// What the changes read of a study: measures of the cell in the unit of the changes.
import { describe, expect, it } from "vitest";
import { meanOf, measuresOfCell, observedHours, valuesOf } from "#analysis/changes/base.ts";
import { meanInterval } from "#analysis/statistics/interval.ts";
import { oneStation } from "../../support/madeOrder.ts";
import { answerMade, baseMade } from "../../support/madeAnswers.ts";

const scenario = { ...oneStation, run: { ...oneStation.run, length: 10_800, warmup: 3600 } };

describe("measures of the cell", () => {
  it("are those of the cell and not of a station; nothing where it has none", () => {
    const base = baseMade(scenario, { shots: [3, 5] });
    expect([meanOf(base, "shots"), meanOf(base, "parts")]).toEqual([4, 0]);
    const { measures } = answerMade(1, { shots: 3 });
    expect([measuresOfCell(measures, "shots"), measuresOfCell(measures, "parts")]).toEqual([3, 0]);
  });

  it("are those of an hour, with a calendar of all hours that count", () => {
    const measures = [{ resource: "cell", measure: "parts", values: [6, null], interval: meanInterval([6]) }];
    expect(observedHours(scenario)).toBe(2);
    expect(valuesOf({ scenario, measures }, "parts")).toEqual([6, 0]);
    const calendar = { begins: "", clockChanges: [], off: [], operators: [], shifts: [], breaks: "stop" } as const;
    expect(valuesOf({ scenario: { ...scenario, calendar }, measures }, "parts")).toEqual([12, 0]);
    expect(() => valuesOf({ scenario, measures }, "shots")).toThrow("every run counts its parts");
  });
});
