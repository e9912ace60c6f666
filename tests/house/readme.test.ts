// Holds the README's tables of codes, stops, time elements, commands and scenarios to the program.
import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { builtCommands } from "#cli/commands/commands.ts";
import { withCodeTable } from "../tools/generators/codeTable.ts";
import { withElementTable } from "../tools/generators/elementTable.ts";
import { withStopTable } from "../tools/generators/stopTable.ts";

const readme = readFileSync("README.md", "utf8");

test("the table of codes equals the generated one (npm run generate)", () => {
  expect(withCodeTable(readme)).toBe(readme);
  expect(withCodeTable(readme.replace("`unit-missing`", "`unit-mising`"))).toBe(readme);
});

test("the matrix of stops equals the simulation's", () => {
  expect(withStopTable(readme)).toBe(readme);
  expect(withStopTable(readme.replace("its shot is lost", "it is kept"))).toBe(readme);
});

test("the table of time elements equals the simulation's", () => {
  expect(withElementTable(readme)).toBe(readme);
  expect(withElementTable(readme.replace("| APT ", "| AUBT "))).toBe(readme);
});

test("every built command has its row", () => {
  for (const { name } of builtCommands) expect(readme).toContain(`| \`${name}`);
});

test("every shipped scenario has its row", () => {
  const scenarios = readdirSync("scenarios").filter((name) => name.endsWith(".yaml"));
  expect(scenarios.length).toBeGreaterThan(0);
  for (const name of scenarios) expect(readme).toMatch(new RegExp(`^\\| \`${name.replace(".yaml", "")}\` +\\|`, "m"));
});
