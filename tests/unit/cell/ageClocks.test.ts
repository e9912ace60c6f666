// Each part on its way to a server with limits of age has a clock of its own.
import { expect, it } from "vitest";
import { planCell } from "#cell/layers/planCell.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";

const takeaway = `takeaway:
  chill: { time: 1 s, buffer: 5, places: 2, minAge: 20 s }
  trim: { time: 1 s, buffer: 3, places: 1 }
  pack: { time: 1 s, buffer: 4, places: 3, maxAge: 300 s }`;

it("there are as many clocks as the buffers and places up to the server hold", () => {
  const { processes } = planCell(scenarioOf(cellText(2, takeaway)));
  const clocksBefore = (server: string): number =>
    processes.filter(({ kind, name }) => kind === "age clock" && name.endsWith(` before ${server}`)).length;
  // By hand [C]: 5 + 2, and 5 + 2 + 3 + 1 + 4 + 3.
  expect([clocksBefore("chill"), clocksBefore("trim"), clocksBefore("pack")]).toEqual([7, 0, 18]);
});
