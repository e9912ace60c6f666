// What ended each wait, and each link of the way back, against the independent recursion of the cell.
import { describe, expect, it } from "vitest";
import { recordScene } from "#report/scene/recordScene.ts";
import { rowOf } from "#report/scene/rowsOf.ts";
import type { SceneRecord } from "#report/scene/sceneRecord.ts";
import { wayBack } from "#report/scene/wayBack.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { readFileSync } from "node:fs";
import { fixedCell } from "../../support/fixedCell.ts";
import { orderedMoldSteps, replication, sameDraws } from "../../support/recursions/recursionComparison.ts";
import { shotRecursion, type StepInterval } from "../../support/recursions/shotRecursion.ts";

const minutes = 20;

function recursed(scenario: Scenario): readonly StepInterval[] {
  const stations = scenario.stations.map((station) => ({
    name: station.name,
    priority: station.priority,
    removal: station.remove.by,
    moldSteps: orderedMoldSteps(station),
  }));
  const { valve, delivery, operators, run } = scenario;
  const rechargeStarts = delivery.kind === "reciprocating-screw" ? delivery.rechargeStarts : "valve-neutral";
  const cell = { stations, dispatch: valve.dispatch, rechargeStarts, operators, start: run.start };
  return shotRecursion(cell, sameDraws(scenario), (minutes * 60 + 60) * 1e6);
}

/** Every wait of a station or of the screw within the record. */
function waitsOf(
  record: SceneRecord,
): readonly { readonly resource: string; readonly seconds: number; readonly until: number }[] {
  return record.resources.flatMap((resource) => {
    if (resource.kind !== "station" && resource.kind !== "screw") return [];
    return Array.from({ length: resource.rows.count }, (_, i) => rowOf(record, resource, i))
      .filter(({ kind, until, seconds }) => kind === "waiting" && until !== null && until < record.until && seconds > 0)
      .map(({ seconds, until }) => ({ resource: resource.name, seconds, until: until! }));
  });
}

const shipped = (name: string): Scenario => {
  const file = `scenarios/${name}.yaml`;
  return readSettled(readFileSync(file, "utf8"), { name, file }).scenario!;
};

const times = { recharge: 3.7, drop: 1.1, close: 0.8, cool: 9.31, remove: 0.87 };
const cells: readonly (readonly [string, Scenario])[] = [
  ["two molds of fixed times", fixedCell({ stations: [times, { ...times, cool: 8.43 }], shift: 0.3 })],
  [
    "three molds of fixed times and one operator",
    fixedCell({
      stations: [times, times, { ...times, cool: 12.1 }].map((each) => ({
        ...each,
        by: "operator" as const,
        remove: 2.13,
      })),
      shift: 0.3,
      operators: 1,
    }),
  ],
  [
    "a recharge that starts at the closed mold",
    fixedCell({ stations: [times, times], shift: 0.3, rechargeStarts: "mold-closed" }),
  ],
  ["scenarios/two-station.yaml", shipped("two-station")],
  ["scenarios/three-station.yaml", shipped("three-station")],
];

describe.each(cells)("%s", (_, scenario) => {
  const record = recordScene(scenario, { replication, until: minutes * 60 });
  const steps = recursed(scenario);
  const ticks = (seconds: number): number => Math.round(seconds * 1e6);
  const endingAt = (seconds: number): readonly StepInterval[] => steps.filter(({ end }) => end === ticks(seconds));

  it("frees every wait by a step that ends at that tick in the recursion", () => {
    const waits = waitsOf(record);
    expect(waits.length).toBeGreaterThan(50);
    for (const { resource, seconds, until } of waits) {
      const [link] = wayBack(record, resource, seconds).links;
      const ended = endingAt(until).map(({ resource: name, step, start }) => `${name}: ${step} from ${start}`);
      expect(ended).toContain(`${link!.resource}: ${link!.step} from ${ticks(link!.from)}`);
    }
  });

  it("goes back by links that each end where the next step of the recursion starts", () => {
    const known = new Set(steps.map(({ resource, step, start, end }) => `${resource} ${step} ${start} ${end}`));
    let links = 0;
    for (const { resource, seconds } of waitsOf(record).slice(-40)) {
      for (const { resource: name, step, from, until } of wayBack(record, resource, seconds).links) {
        expect(known).toContain(`${name} ${step} ${ticks(from)} ${ticks(until)}`);
        links++;
      }
    }
    expect(links).toBeGreaterThan(100);
  });
});
