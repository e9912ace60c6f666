// Calls with an order and with work shifts, as a user makes them.
import { readFileSync } from "node:fs";
import path from "node:path";
import { parse } from "csv-parse/sync";
import { expect, it } from "vitest";
import { newFolder, projectFolder } from "./callBlowcell.ts";
import { callHere } from "./callHere.ts";
import { isLong } from "../support/caseCount.ts";

const folder = newFolder();
const fileOf = (name: string) => path.join(projectFolder, `scenarios/${name}.yaml`);
const promise = (...args: readonly string[]) => callHere(["promise", fileOf("two-station"), ...args], { folder });
const begin = ["--start", "2026-11-30 06:00"];
const shifts = ["--shifts", "2 x 8 h, mon-fri", ...begin];
const oneShift = ["--shifts", "1 x 8 h, mon-fri", ...begin];

const rowsOf = (name: string): readonly Record<string, string>[] =>
  parse(readFileSync(path.join(folder, name)), { columns: true });

it("one call promises an order of a cell without a calendar", async () => {
  const { code, output } = await promise(
    "--order",
    "8000 parts",
    "--due",
    "Tuesday 14:00",
    "--replications",
    "80",
    ...shifts,
    "--out",
    "a",
  );
  expect(code).toBe(0);
  expect(output).toMatch(/^Yes: .*Tue 2026-12-01 14:00/u);
  expect(readFileSync(path.join(folder, "a/report.html"), "utf8")).toContain("When it is done");
});

it.runIf(isLong)("names levers where the order does not fit, and each repeats by the options of its row", async () => {
  const call = ["--order", "14000 parts", "--due", "Tuesday 08:00", "--replications", "20", ...oneShift, "--json"];
  const { code, output } = await promise(...call, "--out", "b");
  expect(code).toBe(1);
  const rows = rowsOf("b/promise-levers.csv");
  expect(output).toContain('"promise-levers"');
  expect(rows.map(({ change }) => change)).toContain("8 h work shift more a day");
  const row = rows.find(({ change }) => change === "one station more")!;
  const options = Array.from(
    row["repeat"]!.replace("blowcell promise FILE ", "").matchAll(/"([^"]*)"|(\S+)/gu),
    ([, quoted, plain]) => quoted ?? plain!,
  );
  await promise(...call, ...options, "--out", "c");
  const [repeated] = rowsOf("c/promise.csv");
  for (const column of ["chance_by_due", "chance_low_95", "chance_high_95"]) {
    expect(repeated![column]).toBe(row[column]);
  }
});

it.each([
  [["--shifts", "4 x 8 h, mon-fri", "--start", "2026-11-30"], "--shifts", "shifts-form"],
  [["--shifts", "2 x 8 h, mon-fri"], "--shifts", "start-missing"],
  [["--shifts", "2 x 8 h, mon-fri", "--start", "monday"], "--start", "start-form"],
  [[...shifts, "--order", "200,000 parts"], "--order", "thousands-separator"],
  [[...shifts, "--order", "2000 parts", "--due", "someday"], "--due", "due-form"],
  [[...shifts, "--order", "2000 parts", "--due", "2026-11-29 14:00"], "--due", "due-past"],
  [[...shifts, "--order", "2000 parts of cap"], "--order", "order-product"],
  [["--order", "2000 parts", "--due", "Friday 14:00"], "--due", "due-calendar"],
  [["--due", "5 d"], "--due", "set-path"],
  [[], "--order", "order-missing"],
])("%j is refused at %s with %s", async (args, option, code) => {
  const { code: exit, output, errors } = await promise(...args);
  expect({ exit, output }).toEqual({ exit: 2, output: "" });
  expect(errors).toMatch(new RegExp(`^${option}: error: .* \\[${code}\\]`, "mu"));
});

it("--shifts and --start give the calendar of a run", async () => {
  const args = [...shifts, "--length", "2 d", "--replications", "2", "--changes", "off"];
  const { code, output } = await callHere(["run", fileOf("two-station"), ...args, "--out", "d"], { folder });
  expect(code).toBe(0);
  expect(output).toMatch(/On shift +67 % of the time/u);
});
