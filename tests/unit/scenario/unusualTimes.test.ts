// Questions about times far from those of any blow molding cell.
import { describe, expect, it } from "vitest";
import { readScenario } from "#scenario/resolving/readScenario.ts";
import { cellText } from "../../support/cellScenario.ts";

describe("an unusual time", () => {
  const asked = (...set: string[]): readonly (readonly [string, string])[] =>
    readScenario(cellText(2), { name: "cell", file: "cell.yaml", set })
      .issues.filter(({ code }) => code === "time-unusual")
      .map(({ path, remedy }) => [path, remedy ?? ""]);

  it("is asked about without a material, with the unit that was probably meant", () => {
    expect(asked("delivery.drop=1.5 min")).toEqual([["delivery.drop", "Check the unit: did you mean 1.5 s?"]]);
    expect(asked("stations.steps.cool=12 ms")).toEqual([["stations.steps.cool", "Check the unit: did you mean 12 s?"]]);
    expect(asked("stations.steps.open=0.6 h")).toEqual([
      ["stations.steps.open", "Check the unit: did you mean 0.6 s?"],
    ]);
    expect(asked("stations.steps.close=40 s")).toEqual([["stations.steps.close", "Check the number and the unit."]]);
  });

  it("is not asked about where it is usual, or where a step takes no time", () => {
    expect(asked("stations.steps.vent=0 s", "stations.steps.cool=10 min", "delivery.drop=25 s")).toEqual([]);
  });
});
