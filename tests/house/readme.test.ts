// What the README says of codes, commands and scenarios is what the program has.
import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { builtCommands } from "#cli/commands/commands.ts";
import { withCodeTable } from "../tools/generators/codeTable.ts";
import { withElementTable } from "../tools/generators/elementTable.ts";
import { withStopTable } from "../tools/generators/stopTable.ts";

const readme = readFileSync("README.md", "utf8");

test("the table of codes is the sources' own; `npm run generate` writes it", () => {
  expect(withCodeTable(readme)).toBe(readme);
  expect(withCodeTable(readme.replace("`unit-missing`", "`unit-mising`"))).toBe(readme);
});

test("the matrix of stops is the simulation's own", () => {
  expect(withStopTable(readme)).toBe(readme);
  expect(withStopTable(readme.replace("its shot is lost", "it is kept"))).toBe(readme);
});

test("the table of time elements is the simulation's own", () => {
  expect(withElementTable(readme)).toBe(readme);
  expect(withElementTable(readme.replace("| APT ", "| AUBT "))).toBe(readme);
});

test.each([".ci/run", "tests/bare/run"])("%s runs the two commands at the top", (file) => {
  const commands = readme.match(/^npm ci && npm \w+/gmu) ?? [];
  expect(commands).toHaveLength(2);
  const script = readFileSync(file, "utf8");
  expect(commands.filter((command) => !new RegExp(`^.*["(]${command}[")]`, "mu").test(script))).toEqual([]);
});

test("every command that is built has its row", () => {
  for (const { name } of builtCommands) expect(readme).toContain(`| \`${name}`);
});

test("every shipped scenario has its row", () => {
  const scenarios = readdirSync("scenarios").filter((name) => name.endsWith(".yaml"));
  expect(scenarios.length).toBeGreaterThan(0);
  for (const name of scenarios) expect(readme).toMatch(new RegExp(`^\\| \`${name.replace(".yaml", "")}\` +\\|`, "m"));
});
