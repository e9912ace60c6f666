// Holds the tables of a study to their descriptions, and the event tables to the measures of the same run.
import { parse } from "csv-parse/sync";
import { describe, expect, it, test } from "vitest";
import { replicationRunner } from "#analysis/replication/runReplication.ts";
import { compareStudies } from "#analysis/study/comparison.ts";
import { runStudy, type Study } from "#analysis/study/study.ts";
import { comparisonTable } from "#report/tables/comparisonTable.ts";
import { toCsv, toCsvPieces } from "#report/tables/csv.ts";
import { eventsTable, shotsTable } from "#report/tables/eventTables.ts";
import { resultJson } from "#report/tables/resultJson.ts";
import { studyTables } from "#report/tables/studyTables.ts";
import { tableSpecs } from "#report/tables/tableSpecs.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";

const operatedCell = scenarioOf(
  cellText(2, "crew: { operators: 1 }\n"),
  "stations.steps.cool={ triangular: [7 s, 8 s, 9 s] }",
  "stations.steps.remove={ time: 2 s, by: operator }",
  "stations.extra=[{ after: close, name: Pin down, time: 0.3 s }]",
  "run.warmup=0 s",
);

function studyOf(scenario: Scenario): Study {
  const outcome = runStudy(scenario);
  if (outcome.kind === "stuck") throw new Error(outcome.issue.message);
  return outcome.study;
}

type Record = Readonly<{ [column: string]: string }>;
const recordsOf = (csv: string): readonly Record[] => parse(csv, { columns: true });
const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

const study = studyOf(operatedCell);
const tables = new Map(studyTables([study]).map((table) => [table.name, recordsOf(toCsv(table))]));
const rowsOf = (name: string) => tables.get(name) ?? [];

describe("the tables of a study", () => {
  it("are those of the data dictionary, except the comparison, the optional and the long ones", () => {
    const others =
      "comparison payback sweep choose promise finish promise-levers changes lost slack totals measured cost stops calendar window fit match events shots".split(
        " ",
      );
    expect([...tables.keys()]).toEqual(tableSpecs.map(({ name }) => name).filter((name) => !others.includes(name)));
    for (const [name, rows] of tables) expect(rows.length, name).toBeGreaterThan(0);
  });

  it("have printed shares of a resource that add up to 1", () => {
    const states = rowsOf("time-by-state");
    const resources = [...new Set(states.map((row) => row["resource"]))];
    expect(resources).toEqual(["plasticator", "valve", "station 1", "station 2", "operator 1"]);
    for (const resource of resources) {
      const own = states.filter((row) => row["resource"] === resource);
      expect(Math.abs(sum(own.map((row) => Number(row["share"]))) - 1), resource).toBeLessThan(1e-9);
      expect(sum(own.map((row) => Number(row["seconds_per_hour"])))).toBeCloseTo(3600, 5);
    }
  });

  it("have every replication's value, with the mean of the summary", () => {
    for (const row of rowsOf("throughput")) {
      const own = rowsOf("replications").filter(
        (each) => each["resource"] === row["resource"] && each["measure"] === row["measure"],
      );
      expect(own.map((each) => each["replication"])).toEqual(["1", "2", "3"]);
      expect(sum(own.map((each) => Number(each["value"]))) / 3).toBeCloseTo(Number(row["mean"]), 6);
    }
  });

  it("rank the resources, and the steps of each, from 1, the largest share first, with shares that add up", () => {
    const resources = rowsOf("bottleneck").filter((row) => row["level"] === "resource");
    const stepsOf = (name: string | undefined) =>
      rowsOf("bottleneck").filter((row) => row["level"] === "step" && row["resource"] === name);
    for (const rows of [resources, ...resources.map((row) => stepsOf(row["resource"]))]) {
      expect(rows.map((row) => Number(row["rank"]))).toEqual(rows.map((_, i) => i + 1));
      const shares = rows.map((row) => Number(row["critical_share"]));
      expect(shares).toEqual(shares.toSorted((a, b) => b - a));
    }
    for (const row of resources) {
      const steps = sum(stepsOf(row["resource"]).map((step) => Number(step["critical_share"])));
      expect(steps).toBeCloseTo(Number(row["critical_share"]), 8);
    }
    expect(sum(resources.map((row) => Number(row["critical_share"])))).toBeCloseTo(1, 8);
  });

  it("have empty half-widths with one replication", () => {
    const once = studyOf({ ...operatedCell, run: { ...operatedCell.run, replications: 1 } });
    for (const table of studyTables([once])) {
      for (const row of recordsOf(toCsv(table))) {
        for (const [column, cell] of Object.entries(row)) if (column.includes("half_width")) expect(cell).toBe("");
      }
    }
  });

  it("have the rows of several studies, each with its name", () => {
    const other = { ...study, scenario: { ...study.scenario, name: "other" } };
    const csv = studyTables([study, other]).map((table) => recordsOf(toCsv(table)).map((row) => row["scenario"]));
    for (const names of csv) expect([...new Set(names)]).toEqual(["test", "other"]);
    const compared = recordsOf(toCsv(comparisonTable(compareStudies(study, [other]))));
    expect(compared).toHaveLength(study.measures.length);
  });
});

describe("the long tables", () => {
  const events = recordsOf([...toCsvPieces(eventsTable(operatedCell))].join(""));
  const shots = recordsOf([...toCsvPieces(shotsTable(operatedCell))].join(""));
  const { length } = operatedCell.run;
  const ofFirst = events.filter((row) => row["replication"] === "1");
  const answer = replicationRunner(operatedCell)({ replication: 1, scale: null });

  it("contain every replication in the order of time, up to its end", () => {
    expect([...new Set(events.map((row) => row["replication"]))]).toEqual(["1", "2", "3"]);
    const times = ofFirst.map((row) => Number(row["time_s"]));
    expect(times).toEqual(times.toSorted((a, b) => a - b));
    expect(times.at(-1)).toBeLessThanOrEqual(length);
  });

  it("have events that add up to every share of time by state", () => {
    for (const resource of new Set(answer.stateShares.map((share) => share.resource))) {
      const own = ofFirst.filter((row) => row["resource"] === resource);
      const held = new Map<string, number>();
      own.forEach((row, i) => {
        const until = Number(own[i + 1]?.["time_s"] ?? length);
        held.set(row["state"] ?? "", (held.get(row["state"] ?? "") ?? 0) + until - Number(row["time_s"]));
      });
      for (const { state, share } of answer.stateShares.filter((each) => each.resource === resource)) {
        expect((held.get(state) ?? 0) / length, `${resource}: ${state}`).toBeCloseTo(share, 6);
      }
    }
  });

  it("have the numbers of parts and shots", () => {
    const hours = length / 3600;
    const of = (measure: string) =>
      answer.measures.find((row) => row.resource === "cell" && row.measure === measure)?.value;
    expect(sum(ofFirst.map((row) => Number(row["parts"]))) / hours).toBeCloseTo(of("good parts per hour") ?? NaN, 6);
    const delivered = shots.filter((row) => row["replication"] === "1" && row["close_start_s"] !== "");
    expect(delivered.length / hours).toBeCloseTo(of("shots per hour") ?? NaN, 6);
  });

  it("name an operator only in a removal by operator, and a cause only in waiting states", () => {
    for (const row of ofFirst) {
      expect(row["operator"] !== "", row["step"]).toBe(
        row["step"] === "remove" ? row["state"] !== "no operator free" : row["step"] === "let go",
      );
      expect(/^(?:awaiting|holding|waiting|neutral|free|no operator)/.test(row["state"] ?? "")).toBe(
        row["cause"] !== "",
      );
    }
  });

  it("have the steps of each shot in order, with a column for an extra step", () => {
    const steps = ["shift_to_port", "drop", "close", "pin_down", "blow", "cool", "vent", "open", "remove"];
    for (const row of shots.filter((each) => each["remove_start_s"] !== "")) {
      const starts = steps.map((step) => Number(row[`${step}_start_s`]));
      expect(starts).toEqual(starts.toSorted((a, b) => a - b));
      expect(Number(row["blow_start_s"]) - Number(row["pin_down_start_s"])).toBeCloseTo(0.3, 4);
      // The mold has closed when the extra step begins.
      expect(Number(row["hang_s"])).toBeCloseTo(Number(row["pin_down_start_s"]) - Number(row["close_start_s"]), 5);
      // The scenario has no material.
      expect([row["sag"], row["time_at_heat_s"]]).toEqual(["", ""]);
    }
    const numbers = shots
      .filter((row) => row["replication"] === "2" && row["station"] === "station 1")
      .map((row) => Number(row["shot"]));
    expect(numbers).toEqual(numbers.map((_, i) => i + 1));
  });

  it("have separate columns for two steps whose names become equal in ASCII", () => {
    const extra =
      "stations.extra=[{ after: close, name: Pin up, time: 1 s }, { after: close, name: pin-up, time: 1 s }, { after: close, name: Ö, time: 1 s }]";
    const columns = shotsTable(scenarioOf(cellText(1), extra)).columns.map(({ name }) => name);
    expect(columns.slice(-7)).toEqual(
      ["pin_up_start_s", "pin_up_2_start_s", "step_start_s"].concat([
        "hang_s",
        "sag",
        "time_at_heat_s",
        "demold_temperature_c",
      ]),
    );
  });
});

test("the result as JSON keeps every name, and has no character that a terminal acts on", () => {
  const title = "a\u009b31m b\u202e c\u2028 d\u001b[0m é";
  const json = resultJson({
    command: "run",
    version: "0",
    scenarios: [{ ...operatedCell, title }],
    warnings: [],
    tables: [],
  });
  expect((JSON.parse(json) as { scenarios: { title: string }[] }).scenarios[0]!.title).toBe(title);
  expect(json.replaceAll("\n", "")).not.toMatch(/[\p{Cc}\u2028\u2029\u202a-\u202e]/u);
});
