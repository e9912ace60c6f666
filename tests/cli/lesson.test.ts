// Holds `page --lesson` to what a trainer sees: every fault with its line, a lesson that does not fit its record, and nothing half-written.
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import { callBlowcell, newFolder, projectFolder } from "./callBlowcell.ts";

const shipped = (file: string): string => readFileSync(path.join(projectFolder, "scenarios/lessons", file), "utf8");

function call(lesson: string): { readonly code: number | null; readonly errors: string; readonly isWritten: boolean } {
  const folder = newFolder();
  writeFileSync(path.join(folder, "mine.yaml"), lesson);
  writeFileSync(
    path.join(folder, "one-station.yaml"),
    readFileSync(path.join(projectFolder, "scenarios/one-station.yaml"), "utf8"),
  );
  const { code, errors } = callBlowcell(["page", "one-station.yaml", "--lesson", "mine.yaml", "--out", "page.html"], {
    folder,
  });
  return { code, errors, isWritten: existsSync(path.join(folder, "page.html")) };
}

const own = shipped("1-one-mold.yaml").replace("../one-station.yaml", "one-station.yaml");

test("a lesson of the call is in the page", () => {
  expect(call(own)).toMatchObject({ code: 0, isWritten: true });
});

test("all faults of a lesson are reported with file, line and remedy, and no page is written", () => {
  const { code, errors, isWritten } = call(
    own.replace("state: closing", "state: closng").replace("by: cycle", "by: cicle"),
  );
  expect(code).toBe(2);
  expect(isWritten).toBe(false);
  expect(errors).toMatch(/mine\.yaml:\d+:\d+.*\n?.*There is no state `closng`/u);
  expect(errors).toContain("Did you mean `closing`?");
  expect(errors).toContain("Did you mean `cycle`?");
});

test("a question that the record does not answer is reported", () => {
  const { code, errors, isWritten } = call(
    own.replace("is: venting", "is: cooling").replace("is: venting", "is: cooling"),
  );
  expect(code).toBe(2);
  expect(isWritten).toBe(false);
  expect(errors).toContain("The record gives venting, and no choice fits.");
});

test("a lesson file that is not there is reported", () => {
  const folder = newFolder();
  const scenario = path.join(projectFolder, "scenarios/one-station.yaml");
  const { code, errors } = callBlowcell(["page", scenario, "--lesson", "none.yaml", "--out", "page.html"], { folder });
  expect(code).toBe(2);
  expect(errors).toContain("none.yaml");
});
