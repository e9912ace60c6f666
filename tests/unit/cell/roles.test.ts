// Each step of a cell has a role, which the layers use; its name appears only in tables.
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readSettled } from "#analysis/study/readSettled.ts";
import { eventRecorder } from "#cell/records/eventRecord.ts";
import { planCell, type CellPlan } from "#cell/layers/planCell.ts";
import { shotRoles } from "#cell/words/cellTable.ts";
import { isOpenTo, stateNames } from "#cell/words/stateNames.ts";
import { stepNames, subjectNames } from "#cell/words/stepNames.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";

function planOfFile(path: string): CellPlan {
  const { scenario, issues } = readSettled(readFileSync(path, "utf8"), { name: "shipped", file: path });
  if (!scenario) throw new Error(JSON.stringify(issues));
  return planCell(scenario);
}

const files = readdirSync("scenarios").filter((name) => name.endsWith(".yaml"));
const plans = [...files.map((name) => `scenarios/${name}`), "tests/bench/everything.yaml"].map(
  (path) => [path, planOfFile(path)] as const,
);

describe.each(plans)("the table of %s", (_, { processes, resources, steps, scenario }) => {
  it("has for every step the name of its role", () => {
    const fixed: Readonly<Record<string, string>> = stepNames;
    const made: Readonly<Record<string, (subject: string) => string>> = subjectNames;
    const wrong = steps.filter(({ role, name }) => {
      const [before = "", after = ""] = made[role]?.("§").split("§") ?? [];
      if (made[role]) return !name.startsWith(before) || !name.endsWith(after);
      return fixed[role] !== undefined && fixed[role] !== name;
    });
    expect(wrong).toEqual([]);
  });

  it("has only the listed states and those of extra steps", () => {
    const known = new Set<string>(Object.values(stateNames));
    const own = new Set(scenario.stations.flatMap(({ extra }) => extra.map(({ name }) => name)));
    const names = resources.flatMap(({ states }) => states.map(({ name }) => name));
    expect(names.filter((name) => !known.has(name) && !own.has(name) && !isOpenTo(name))).toEqual([]);
  });

  it("has one process for each station, with one step that gives the shot to the mold", () => {
    const own = processes.filter(({ kind }) => kind === "station");
    expect(own.map(({ station }) => station)).toEqual(scenario.stations.map(({ name }) => name));
    const shots = own.map((process) => process.steps.filter(({ role }) => shotRoles.includes(role)).length);
    expect(shots).toEqual(own.map(() => 1));
  });
});

// Names of the program's own steps, given to an extra step in another place.
describe("an extra step with the name of a step of the program", () => {
  const named = (name: string): Scenario =>
    scenarioOf(
      cellText(1, "takeaway:\n  pack: { time: 1 s, buffer: 20 }").replace(
        "remove: { time: 0.8 s } }",
        `remove: { time: 0.8 s } }\n  extra: [{ name: ${name}, after: cool, time: 1 s }]`,
      ),
      "run.length=5 min",
      "run.warmup=0 s",
    );
  const eventsOf = (name: string): readonly (readonly [number, number])[] =>
    [...eventRecorder(named(name))(1)].map(({ seconds, parts }) => [seconds, parts] as const);

  it.each(["pass on", "refuse", "hand over 1", "part 1 judged", "stand at the head"])(
    "%s runs like any other, and releases no part",
    (name) => {
      const plain = eventsOf("pin down");
      expect(plain.some(([, parts]) => parts > 0)).toBe(true);
      expect(eventsOf(name)).toEqual(plain);
    },
  );
});
