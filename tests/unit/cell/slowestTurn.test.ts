// The first estimate of a turn grows by what the slowest server needs for the parts of one turn.
import { expect, it } from "vitest";
import { planCell, slowestTurn } from "#cell/layers/planCell.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";

it.each([
  // By hand [C]: four parts of two stations, 30 s each, at two places.
  ["of all stations", "takeaway: { trim: { time: 30 s, buffer: 5, places: 2 }, pack: { time: 1 s, buffer: 5 } }", 60],
  ["none", "", 0],
])("%s", (_, takeaway, seconds) => {
  const turnOf = (text: string): number => slowestTurn(planCell(scenarioOf(cellText(2, text))));
  expect(turnOf(takeaway) - turnOf("")).toBe(seconds * 1e6);
});
