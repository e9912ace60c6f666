// The shipped cells and the starters lie inside common practice, except where that is their lesson.
import { readdirSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import { outsideWindow, stationWindows } from "#analysis/window/stationWindow.ts";
import { distributionMean } from "#engine/distributions/moments.ts";
import { starterScenario } from "#scenario/starter/starterScenario.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { distributionSd } from "../../support/draws/distributionSd.ts";
import { scenarioOf, shippedText } from "../../support/reported.ts";

const folder = new URL("../../../scenarios/", import.meta.url);
const shipped = readdirSync(folder).flatMap((file) => (file.endsWith(".yaml") ? [file.replace(/\.yaml$/u, "")] : []));

/** The unusual row that a cell shows as its lesson, and the sentence of its file that says so. */
const lessons: Readonly<Record<string, readonly [row: string, sentence: string]>> = {
  "handled-container": ["cooling share of the cycle above", "# The cooling share of the cycle is unusual here: "],
  "large-part": ["parison drop of a reciprocating screw above", "# The parison drop is unusual here: "],
};

/** Nothing is simulated; the first work shift lies in the first day. */
const settled = (text: string, name: string): Scenario => scenarioOf(text, name, ["run.length=24 h"], readSettled);

function unusualRows(text: string, name: string): readonly string[] {
  const scenario = settled(text, name);
  const outside = outsideWindow(stationWindows(scenario, idealCycle(scenario)));
  return outside.flatMap(({ quantity, verdict, isPractice }) => (isPractice ? [`${quantity} ${verdict}`] : []));
}

/** Standard deviation over mean of each station's cooling time. */
function coolingSpreads(text: string, name: string): readonly number[] {
  const { stations } = settled(text, name);
  return stations.map(({ cool }) => distributionSd(cool) / distributionMean(cool));
}

describe.each(shipped)("the shipped cell %s", (name) => {
  const text = shippedText(name);

  it("has an unusual value only where that is its lesson", () => {
    const [row, sentence] = lessons[name] ?? [];
    expect(unusualRows(text, name)).toEqual(row === undefined ? [] : [row]);
    if (sentence !== undefined) expect(text).toContain(sentence);
  });

  it("says that cooling is a timer, and draws it from no wide distribution", () => {
    expect(text).toContain("\n# Cooling runs on a timer and repeats to milliseconds.");
    for (const spread of coolingSpreads(text, name)) expect(spread).toBeLessThanOrEqual(0.005);
  });
});

it("a cooling time of 7 to 9 s is a wide distribution, and a close of 0.1 s is unusual", () => {
  const text = shippedText("two-station");
  const [spread] = coolingSpreads(text.replaceAll("cool: 7.5 s", "cool: { triangular: [7 s, 7.5 s, 9 s] }"), "wide");
  expect(spread).toBeGreaterThan(0.05);
  expect(unusualRows(text.replaceAll("close: 0.8 s", "close: 0.1 s"), "short")).toEqual([
    "close and open together below",
  ]);
});

describe.each(["reciprocating-screw", "accumulator-head", "continuous"] as const)("the starter of %s", (kind) => {
  const commented = starterScenario({ stations: 2, kind }, "mine.yaml");
  // With the group of the product, which the process window needs.
  const text = commented.replace(/^## Product[^]*?(?=\n\n)/mu, (group) => group.replaceAll(/^# /gmu, ""));

  it("has no value that is unusual, and a constant cooling time", () => {
    expect(text).toMatch(/^ {2}partMass: 42 g/mu);
    expect(unusualRows(text, "mine")).toEqual([]);
    expect(coolingSpreads(text, "mine")).toEqual([0, 0]);
  });
});
