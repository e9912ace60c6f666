// shots.csv of continuous extrusion: columns of its own steps, removal by the mask, and hang time.
import { expect, it } from "vitest";
import { readSettled } from "#analysis/study/readSettled.ts";
import { shotsTable } from "#report/tables/eventTables.ts";
import { shippedText } from "../../support/reported.ts";

// By hand at fixed times [C]: left travels in 0–0.7, closes on the parison of the running start until 1.3, cuts until 1.5 and
// travels out until 2.2. A parison of 109.2 g at 50 kg/h takes 7.8624 s, longer than the molds. Right closes at 0.7 + 7.8624 s on
// its full length, and is closed 0.6 s later.
it("gives the steps and hang times of the shipped bottle", () => {
  const { scenario } = readSettled(shippedText("bottle-continuous"), {
    name: "bottle-continuous",
    file: "bottle-continuous.yaml",
    set: [
      "delivery.plasticatingRate=50 kg/h",
      "delivery.rateRange.min=40 kg/h",
      "stations.left.steps.cool=7.5 s",
      "stations.left.steps.remove.time=0.8 s",
      "run.length=30 s",
      "run.replications=1",
      "run.warmup=0 s",
    ],
  });
  const table = shotsTable(scenario!);
  const columns = table.columns.map(({ name }) => name);
  const rows = [...table.batches].flat().map((row) => Object.fromEntries(columns.map((name, i) => [name, row[i]])));
  const [left, right] = [rows[0]!, rows[1]!];
  expect(left).toMatchObject({ station: "left", travel_in_start_s: 0, close_start_s: 0.7, cut_start_s: 1.5 });
  // 2.4 + 0.5 + 7.5 + 0.5 + 0.8 = 11.7: the mask takes the parts.
  expect(left).toMatchObject({ travel_out_start_s: 1.7, blow_start_s: 2.4, remove_start_s: 11.7, hang_s: null });
  expect(right).toMatchObject({ station: "right", close_start_s: 8.5624, hang_s: expect.closeTo(0.8, 9) });
});
