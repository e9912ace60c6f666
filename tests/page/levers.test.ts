// Every lever of the place Try makes a change that the reader takes, or refuses in words; a saved file keeps its comments.
import { describe, expect, it } from "vitest";
import { readdirSync } from "node:fs";
import { parse } from "yaml";
import { openLevers } from "#page/trial/openLevers.ts";
import { readGiven } from "#page/trial/readGiven.ts";
import { textWith } from "#page/trial/textWith.ts";
import type { GivenScenario } from "#page/file/given.ts";
import { positionIn, settingsWith } from "#page/try/leverSettings.ts";
import { firstCases } from "../support/caseCount.ts";
import { shippedText } from "../support/reported.ts";

const names = readdirSync("scenarios")
  .filter((name) => name.endsWith(".yaml"))
  .map((name) => name.replace(".yaml", ""));
const first = ["two-station", "one-operator-four-molds", ...names];

const given = (name: string): GivenScenario => {
  return { name, file: `${name}.yaml`, text: shippedText(name), beside: {}, set: [] };
};

/** What a setting changes in a scenario; the run itself stays. */
const cellOf = (name: string, set: readonly string[]): unknown => {
  const { call: _, ...cell } = readGiven({ given: given(name), set }).scenario ?? {};
  return cell;
};

describe.each(firstCases([...new Set(first)], 2))("the levers of %s", (name) => {
  const { first: four, more } = openLevers({ given: given(name), set: [] });
  const levers = [...four, ...more];

  it("are four, then all others, each once", () => {
    expect(four).toHaveLength(4);
    expect(new Set(levers.map(({ id }) => id)).size).toBe(levers.length);
    expect(new Set(levers.map(({ name: each }) => each)).size).toBe(levers.length);
  });

  it.each(levers.map((lever) => [lever.name, lever] as const))(
    "%s changes the cell or is refused in words",
    (_, lever) => {
      const { positions, present } = lever;
      expect(positions[present]!.settings).toEqual([]);
      for (const at of [present - 1, present + 1].filter((each) => positions[each])) {
        const set = settingsWith(levers, [], lever, at);
        expect(positionIn(lever, set)).toBe(at);
        const { scenario, issues } = readGiven({ given: given(name), set });
        // A product that no mold makes now has no effect on the run.
        if (scenario && !lever.id.startsWith("products."))
          expect(JSON.stringify(cellOf(name, set)), set.join(" ")).not.toBe(JSON.stringify(cellOf(name, [])));
        if (!scenario)
          expect(issues.filter(({ severity, remedy }) => severity === "error" && remedy !== "")).not.toEqual([]);
      }
    },
  );

  it("are written into the text with its comments, which then gives the same cell", () => {
    const lever = four[0]!;
    const at = lever.positions[lever.present + 1] ? lever.present + 1 : lever.present - 1;
    const set = settingsWith(levers, [], lever, at);
    const text = textWith({ given: given(name), set });
    const commentsOf = (each: string): readonly string[] => each.match(/(?<=^|\s)# .*/gmu) ?? [];
    expect(commentsOf(text)).toEqual(commentsOf(shippedText(name)));
    expect(parse(text)).not.toEqual(parse(shippedText(name)));
    const { call: _, ...saved } = readGiven({ given: { ...given(name), text }, set: [] }).scenario!;
    expect(saved).toEqual(cellOf(name, set));
  });
});

it("keeps the comment behind a value", () => {
  const text = shippedText("two-station").replaceAll("cool: 7.5 s", "cool: 7.5 s # on a timer");
  const saved = textWith({ given: { ...given("two-station"), text }, set: ["stations.*.steps.cool=-0.5 s"] });
  expect(saved.match(/cool: 7 s # on a timer/gu)).toHaveLength(2);
});
