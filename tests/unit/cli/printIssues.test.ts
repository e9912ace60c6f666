// The printed form of issues: place, value, expectation and remedy.
import { describe, expect, it } from "vitest";
import { exitCodeOf, worstOf } from "#cli/machine/exitCode.ts";
import { printIssues } from "#cli/output/printIssues.ts";
import type { Issue } from "#foundation/issue.ts";
import { openFakeHost } from "./fakeHost.ts";

const issue: Issue = {
  code: "unit-missing",
  severity: "error",
  place: { file: "a.yaml", line: 12, column: 7 },
  path: "stations.left.steps.cool",
  message: "a time needs a unit",
  value: "7.5",
  expected: "a time, such as 7.5 s",
  remedy: "Write 7.5 s.",
  fate: "file",
};

function printed(issues: readonly Issue[]): string {
  const host = openFakeHost();
  printIssues(issues, host);
  expect(host.written.output).toBe("");
  return host.written.errors;
}

describe("printing issues", () => {
  it("gives place, path, value, expectation, remedy and code", () => {
    expect(printed([issue])).toBe(
      [
        "a.yaml:12:7: error: a time needs a unit [unit-missing]",
        "    at        stations.left.steps.cool",
        "    found     7.5",
        "    expected  a time, such as 7.5 s",
        "    remedy    Write 7.5 s.",
        "More: blowcell explain unit-missing",
        "",
      ].join("\n"),
    );
  });

  it("leaves out fields that an issue does not have", () => {
    const bare: Issue = { code: "x", severity: "hint", path: "", message: "m", remedy: "r", fate: "file" };
    expect(printed([bare])).toBe("blowcell: hint: m [x]\n    remedy    r\nMore: blowcell explain x\n");
  });

  it("follows the order of the file, and ends with the counts and the codes", () => {
    const at = (line: number, column: number, severity: Issue["severity"]): Issue => {
      return { ...issue, severity, place: { file: "a.yaml", line, column } };
    };
    const lines = printed([at(10, 1, "error"), at(9, 20, "warning"), at(9, 3, "error")]).split("\n");
    const places = lines.filter((line) => line.startsWith("a.yaml")).map((line) => line.split(": ")[0]);
    expect(places).toEqual(["a.yaml:9:3", "a.yaml:9:20", "a.yaml:10:1"]);
    expect(lines.slice(-3, -1)).toEqual(["2 errors, 1 warning", "More: blowcell explain unit-missing"]);
  });

  it("names each code once, and at most three of them", () => {
    const last = (...codes: readonly string[]) =>
      printed(codes.map((code) => ({ ...issue, code })))
        .trimEnd()
        .split("\n")
        .at(-1);
    expect(last("b", "a", "b", "c")).toBe("More: blowcell explain b a c");
    expect(last("b", "a", "d", "c")).toBe("More: blowcell explain b a d …");
  });

  it("escapes and shortens values", () => {
    const text = printed([{ ...issue, value: `\u001b[2J${"x".repeat(5000)}` }]);
    expect(text).toContain("found     \\u001b[2Jxxx");
    expect(text.length).toBeLessThan(600);
  });

  it("prints nothing without issues", () => {
    expect(printed([])).toBe("");
  });
});

describe("the exit code of issues", () => {
  it.each([
    ["no issues is the right one", [], 0],
    ["a warning is the right one", [{ ...issue, severity: "warning" as const }], 0],
    ["a cell that cannot work is the right one", [{ ...issue, fate: "cell" as const }], 1],
    ["a wrong text is the right one", [{ ...issue, fate: "cell" as const }, issue], 2],
  ])("of %s", (_case, issues, code) => {
    expect(exitCodeOf(issues)).toBe(code);
  });

  it("is the worst of many files", () => {
    expect(worstOf([0, 2, 1])).toBe(2);
    expect(worstOf([])).toBe(0);
  });
});
