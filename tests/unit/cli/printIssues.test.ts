// Holds the telling of issues to what a user needs: where, what, what was expected, and the remedy.
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

function told(issues: readonly Issue[]): string {
  const host = openFakeHost();
  printIssues(issues, host);
  expect(host.said.output).toBe("");
  return host.said.errors;
}

describe("printing issues", () => {
  it("gives place, path, value, expectation, remedy and code", () => {
    expect(told([issue])).toBe(
      [
        "a.yaml:12:7: error: a time needs a unit [unit-missing]",
        "    at        stations.left.steps.cool",
        "    found     7.5",
        "    expected  a time, such as 7.5 s",
        "    remedy    Write 7.5 s.",
        "",
      ].join("\n"),
    );
  });

  it("leaves out what an issue does not have", () => {
    const bare: Issue = { code: "x", severity: "hint", path: "", message: "m", remedy: "r", fate: "file" };
    expect(told([bare])).toBe("blowcell: hint: m [x]\n    remedy    r\n");
  });

  it("follows the text and counts at the end", () => {
    const at = (line: number, column: number, severity: Issue["severity"]): Issue => {
      return { ...issue, severity, place: { file: "a.yaml", line, column } };
    };
    const lines = told([at(10, 1, "error"), at(9, 20, "warning"), at(9, 3, "error")]).split("\n");
    const places = lines.filter((line) => line.startsWith("a.yaml")).map((line) => line.split(": ")[0]);
    expect(places).toEqual(["a.yaml:9:3", "a.yaml:9:20", "a.yaml:10:1"]);
    expect(lines.at(-2)).toBe("2 errors, 1 warning");
  });

  it("lets no value play with the terminal or fill it", () => {
    const text = told([{ ...issue, value: `\u001b[2J${"x".repeat(5000)}` }]);
    expect(text).toContain("found     \\u001b[2Jxxx");
    expect(text.length).toBeLessThan(600);
  });

  it("says nothing where there is nothing to say", () => {
    expect(told([])).toBe("");
  });
});

describe("the exit code of issues", () => {
  it.each([
    ["nothing", [], 0],
    ["a warning", [{ ...issue, severity: "warning" as const }], 0],
    ["a cell that cannot work", [{ ...issue, fate: "cell" as const }], 1],
    ["a text that is wrong", [{ ...issue, fate: "cell" as const }, issue], 2],
  ])("of %s", (_case, issues, code) => {
    expect(exitCodeOf(issues)).toBe(code);
  });

  it("is the worst of many files", () => {
    expect(worstOf([0, 2, 1])).toBe(2);
    expect(worstOf([])).toBe(0);
  });
});
