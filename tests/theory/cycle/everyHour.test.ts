// Every hour of every resource has one place: in the states, in the table on the screen, and in the shares of the critical path.
import { readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { parse } from "csv-parse/sync";
import * as fc from "fast-check";
import { expect, it, test } from "vitest";
import { resourceGroups, stepGroups } from "#analysis/bottleneck/resourceGroups.ts";
import { replicationRunner } from "#analysis/replication/runReplication.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import { runStudy, type Study } from "#analysis/study/study.ts";
import { summarizeStates } from "#analysis/study/summarizeStates.ts";
import { timeUseLines } from "#report/answers/timeUse.ts";
import { toCsv } from "#report/tables/csv.ts";
import { bottleneckTable } from "#report/tables/studyTables.ts";
import { caseCount } from "../../support/caseCount.ts";
import { disturbed } from "../../support/randomDisturbances.ts";
import { everywhere, randomScenario } from "../../support/randomScenario.ts";
import { shippedText } from "../../support/reported.ts";

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

type Timed = Pick<Study, "states" | "scenario">;

/** The percentages of each row of the table on the screen, by the name of the row. */
function screenRows(study: Timed): ReadonlyMap<string, ReadonlyMap<string, number>> {
  const [head = "", ...lines] = timeUseLines(study);
  const columns = head
    .trim()
    .split(/\s{2,}/u)
    .slice(0, -1);
  return new Map(
    lines.map((line) => {
      const [name = "", ...cells] = line.split(/\s{2,}/u);
      return [name, new Map(columns.map((column, i) => [column, Number.parseFloat(cells[i] ?? "")]))];
    }),
  );
}

function expectPlaces(study: Timed): void {
  for (const resource of new Set(study.states.map((state) => state.resource))) {
    const shares = study.states.filter((state) => state.resource === resource).map(({ share }) => share.mean);
    expect(Math.abs(sum(shares) - 1), resource).toBeLessThan(1e-9);
    expect(Math.min(...shares)).toBeGreaterThanOrEqual(0);
  }
  const rows = [...screenRows(study)];
  expect(rows.length).toBeGreaterThan(1);
  for (const [name, cells] of rows) expect(Math.round(10 * sum([...cells.values()])), name).toBe(1000);
  // No column is empty.
  for (const column of rows[0]![1].keys())
    expect(
      rows.some(([, cells]) => cells.get(column)! > 0),
      column,
    ).toBe(true);
}

const shipped = readdirSync(fileURLToPath(new URL("../../../scenarios", import.meta.url)))
  .filter((name) => name.endsWith(".yaml"))
  .map((name) => name.slice(0, -".yaml".length));

it.each(shipped)("%s has a place for every hour", (name) => {
  const text = shippedText(name);
  const length = text.includes("\ncalendar:") ? "3 d" : "1 h";
  const { scenario } = readSettled(text, {
    name,
    file: `${name}.yaml`,
    set: ["run.replications=2", `run.length=${length}`, "run.warmup=auto"],
  });
  const outcome = runStudy(scenario!);
  if (outcome.kind === "stuck") throw new Error(outcome.issue.message);
  const { study } = outcome;
  expectPlaces(study);
  const rows: readonly Readonly<Record<string, string>>[] = parse(toCsv(bottleneckTable([study])), { columns: true });
  const resources = rows.filter((row) => row["level"] === "resource");
  const shares = resources.map((row) => Number(row["critical_share"]));
  expect(Math.abs(sum(shares) - 1)).toBeLessThan(1e-8);
  // The utilization of the bottleneck is the time at work of the table of states.
  for (const { resources: alike, utilization } of study.bottleneck) {
    const works = study.states.filter(({ resource, kind }) => alike.includes(resource) && kind === "working");
    expect(sum(works.map(({ share }) => share.mean)) / alike.length, alike[0]).toBeCloseTo(utilization, 9);
  }
});

test("every random cell has a place for every hour: with stops, walks, packing, and any delivery through a valve", () => {
  const cells = disturbed(randomScenario({ ...everywhere, length: 400 }));
  const seen = new Map<string, number>();
  fc.assert(
    fc.property(cells, (scenario) => {
      const answer = replicationRunner(scenario)({ replication: 1, scale: null });
      expect(answer.standstill).toBeNull();
      const states = summarizeStates(scenario, [answer]);
      expectPlaces({ scenario, states });
      for (const { state, share } of states) if (share.mean > 0) seen.set(state, (seen.get(state) ?? 0) + 1);
      const groups = stepGroups(scenario, answer.criticalShares, true);
      const shares = [...resourceGroups(scenario).keys()].map((group) =>
        sum(
          groups
            .filter((each) => each.group === group)
            .flatMap(({ places }) => places.map((place) => answer.criticalShares[place]!.share)),
        ),
      );
      expect(sum(shares)).toBeCloseTo(1, 9);
    }),
    { seed: 20261129, numRuns: 2 * caseCount },
  );
  // Every cause of a wait occurs, or the sums would prove little.
  for (const state of ["screw stopped", "valve stopped", "no operator free", "operator on the way", "stopped"])
    expect(seen.get(state) ?? 0, state).toBeGreaterThan(caseCount / 20);
});
