// The screw holds its token through several timed steps in a row, and a calendar takes it only between them.
import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { planCell } from "#cell/layers/planCell.ts";
import { SCREW_MAY_WORK } from "#cell/words/placeNames.ts";
import { PLASTICATOR } from "#cell/words/cycleNames.ts";
import { scenarioOf } from "../../support/cellScenario.ts";
import { commonText } from "../report/scene/commonCell.ts";

const calendar = `calendar={ from: 2026-03-23, shifts: [{ start: "06:00", end: "14:00" }] }`;

const shipped = ["two-station", "canister-accumulator-head", "bottle-continuous"];
const texts = shipped.map((name) => [name, readFileSync(`scenarios/${name}.yaml`, "utf8")] as const);

it.each([...texts, ["a common accumulator, filled in two steps", commonText] as const])("of %s", (_, text) => {
  const scenario = scenarioOf(text, calendar, "run.length=2 d");
  const { processes } = planCell(scenario);
  const working = processes.filter(({ kind }) => kind === "screw" || kind === "head");
  expect(working.length).toBeGreaterThan(0);
  for (const { resource, steps } of working) {
    let held = 0;
    let timed = 0;
    for (const { needs = [], gives = [], time } of steps) {
      held += needs.filter(({ place }) => place === SCREW_MAY_WORK).length;
      const isWork = time !== undefined && (time.resource ?? resource) === PLASTICATOR;
      timed += isWork ? 1 : 0;
      expect(held).toBe(isWork ? 1 : 0);
      held -= gives.filter(({ place }) => place === SCREW_MAY_WORK).length;
    }
    expect([timed > 0, held]).toEqual([true, 0]);
  }
});
