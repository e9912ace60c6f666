// Holds the README's tables of codes, stops, time elements, scenarios and commands, and the sample logs to the program.
import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import { builtCommands } from "#cli/commands/commands.ts";
import { withCodeTable } from "../tools/generators/codeTable.ts";
import { withElementTable } from "../tools/generators/elementTable.ts";
import { withKeyList } from "../tools/generators/keyList.ts";
import { eventLog, stepLog } from "../tools/generators/sampleLogs.ts";
import { withScenarioTable } from "../tools/generators/scenarioTable.ts";
import { withStopTable } from "../tools/generators/stopTable.ts";

const readme = readFileSync("README.md", "utf8");
const cell = readFileSync("src/cell/README.md", "utf8");
const scenarioKeys = readFileSync("scenarios/README.md", "utf8");

test("the table of message codes equals the generated one (npm run generate)", () => {
  expect(withCodeTable(scenarioKeys)).toBe(scenarioKeys);
  expect(withCodeTable(scenarioKeys.replace("`unit-missing`", "`unit-mising`"))).toBe(scenarioKeys);
});

test("the list of keys is generated from the sources", () => {
  expect(withKeyList(scenarioKeys)).toBe(scenarioKeys);
  expect(withKeyList(scenarioKeys.replace("`run.seed`", "`run.sead`"))).toBe(scenarioKeys);
});

test("the matrix of stops equals the simulation's", () => {
  expect(withStopTable(cell)).toBe(cell);
  expect(withStopTable(cell.replace("| its shot is lost", "| it is kept"))).toBe(cell);
});

test("the table of time elements equals the simulation's", () => {
  expect(withElementTable(cell)).toBe(cell);
  expect(withElementTable(cell.replace("| APT ", "| AUBT "))).toBe(cell);
});

test("the scenario that is shown whole can be run as it is", () => {
  const text = /```yaml\n(.*?)```/su.exec(readme)?.[1] ?? "";
  const { scenario, issues } = readSettled(text, { name: "mine", file: "mine.yaml" });
  expect(issues).toEqual([]);
  expect(idealCycle(scenario!).secondsPerShot).toBeGreaterThan(0);
});

test.each([".ci/run", "tests/bare/run"])("%s runs the two commands at the top", (file) => {
  const commands = readme.match(/^npm ci && npm \w+/gmu) ?? [];
  expect(commands).toHaveLength(2);
  const script = readFileSync(file, "utf8");
  expect(commands.filter((command) => !new RegExp(`^.*["(]${command}[")]`, "mu").test(script))).toEqual([]);
});

test("every built command has its row", () => {
  for (const { name } of builtCommands) expect(readme).toContain(`| \`${name}`);
});

test("the table of shipped scenarios equals the generated one", () => {
  const names = readdirSync("scenarios").filter((name) => name.endsWith(".yaml"));
  expect(names.length).toBeGreaterThan(0);
  const files = new Map(names.toSorted().map((name) => [name, readFileSync(`scenarios/${name}`, "utf8")]));
  expect(withScenarioTable(scenarioKeys, files)).toBe(scenarioKeys);
  expect(withScenarioTable(scenarioKeys.replace("| `two-molds`", "| `two-mold`"), files)).toBe(scenarioKeys);
});

test("the sample logs equal the generated ones (npm run generate)", () => {
  const logOf = (name: string) => readFileSync(`scenarios/logs/invented-${name}.csv`, "utf8");
  const textOf = (name: string) => readFileSync(`scenarios/${name}.yaml`, "utf8");
  expect(eventLog(textOf("two-molds"))).toBe(logOf("two-molds"));
  expect(stepLog(textOf("two-station"))).toBe(logOf("two-station"));
});

test("every shipped scenario states in its second line that it is invented", () => {
  const scenarios = readdirSync("scenarios").filter((name) => name.endsWith(".yaml"));
  const unmarked = scenarios.filter(
    (name) => !readFileSync(`scenarios/${name}`, "utf8").split("\n")[1]!.endsWith("? Cell and product are invented."),
  );
  expect(unmarked).toEqual([]);
});
