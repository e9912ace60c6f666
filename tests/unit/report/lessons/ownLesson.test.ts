// A lesson of a trainer's own: what is wrong in it is reported at its place, all at once and with a remedy.
import { readFileSync } from "node:fs";
import * as z from "zod/mini";
import { describe, expect, it, test } from "vitest";
import { lessonKeys } from "#report/lessons/lessonKeys.ts";
import { readLesson } from "#report/lessons/readLesson.ts";
import { solveLesson } from "#report/lessons/solveLesson.ts";
import { runOnce } from "#report/lessons/spells.ts";

const cell = `cells:
  mine:
    length: 2 min
    scenario:
      format: 1
      product: { partMass: 40 g, flash: 0 % of part }
      delivery: { kind: reciprocating-screw, recharge: 4 s, drop: 1 s }
      valve: { shift: 0.3 s }
      stations:
        - name: left
          cavities: 1
          steps: { close: 1 s, blow: 1 s, cool: 8 s, vent: 1 s, open: 1 s, remove: { time: 1 s } }
`;
const rest = `moments:
  drop: { resource: left, state: parison drop }
  close: { resource: left, state: closing, after: drop }
values:
  drop time: { duration: drop }
  next: { next: drop }
stages:
  - at: close
    until: close
    look: The drop takes {drop time}.
    predict:
      ask: What comes next?
      by: next
      choices:
        - { text: It closes., is: closing, because: It closes. }
        - { text: It blows., is: blowing, because: It is open. }
    reveal: It closes.
    explain: So it is.
question:
  ask: How long is the drop?
  by: drop time
  choices:
    - { text: A second., from: 0.9, below: 1.1, because: It is {drop time}. }
    - { text: Longer., from: 1.1, because: It is {drop time}. }
`.replaceAll("{drop time}. }", "short. }");
const head = "title: Mine\ngoal: You can write a lesson.\n";

const read = (text: string) => readLesson(text, { name: "mine", file: "mine.yaml" });
const found = (text: string): readonly string[] =>
  read(text).issues.map(({ code, place, message, remedy }) => `${place?.line} ${code}: ${message} ${remedy}`);

/** What only the record shows. */
function findings(text: string): readonly string[] {
  const { lesson, toIssue } = read(text);
  const runs = new Map([...lesson!.cells].map(([name, scenario]) => [name, runOnce(scenario)]));
  return solveLesson(lesson!, runs)
    .findings.map(toIssue)
    .map(({ code, place, message }) => `${place?.line} ${code}: ${message}`);
}

const lineOf = (text: string, part: string): number => text.slice(0, text.indexOf(part)).split("\n").length;

describe("a lesson of a trainer's own", () => {
  it("is solved from the record of its own scenario", () => {
    const text = head + cell + rest;
    expect(found(text)).toEqual([]);
    expect(findings(text)).toEqual([]);
    const { lesson } = read(text);
    const { solved } = solveLesson(lesson!, new Map([["mine", runOnce(lesson!.cells.get("mine")!)]]));
    expect(solved?.stages[0]).toMatchObject({ cell: "mine", at: 1.3, until: 2.3, look: "The drop takes 1.00 s." });
  });

  it("reports all faults at once, each with line and remedy", () => {
    const text = (head + cell + rest)
      .replace("goal:", "goall:")
      .replace("state: parison drop", "state: parson drop")
      .replace("cool: 8 s", "cool: 8")
      .replace("after: drop", "after: drip")
      .replace("{ duration: drop }", "{ duration: drop, start: drop }")
      .replace("takes {drop time}", "takes {drop tim}");
    expect(found(text)).toEqual([
      "1 missing: `goal` is missing. Add `goal`: a text such as `You can say who waits.`.",
      "2 unknown-key: The key `goall` is not known here. Did you mean `goal`?",
      expect.stringMatching(`^${lineOf(text, "cool: 8")} unit-missing: `),
      `${lineOf(text, "parson")} unknown-choice: There is no state \`parson drop\`. Did you mean \`parison drop\`?`,
      `${lineOf(text, "drip")} lesson-name: This lesson has no moment \`drip\`. Did you mean \`drop\`?`,
      `${lineOf(text, "start: drop")} lesson-value: The value has several measures. Write one measure, such as \`{ duration: first drop }\`.`,
      `${lineOf(text, "tim}")} lesson-name: This lesson has no value \`drop tim\`. Did you mean \`drop time\`?`,
    ]);
  });

  it.each([
    [
      "resource: left, state: closing",
      "resource: rihgt, state: closing",
      "lesson-name: The cell `mine` has no resource `rihgt`.",
    ],
    ["by: next", "by: nxt", "lesson-name: This lesson has no value `nxt`. Did you mean `next`?"],
    ["at: close", "at: clos", "lesson-name: This lesson has no moment `clos`. Did you mean `close`?"],
    ["is: closing, ", "", "lesson-choice: This choice does not say when it is right."],
    ["after: drop }", "after: drop, cell: yours }", "lesson-name: This lesson has no cell `yours`."],
    ["{ next: drop }", "{ between: [drop] }", "lesson-value: `between` needs two names."],
    ["{ next: drop }", "{ ratio: [next, drop time] }", "lesson-name: This lesson has no value `next`."],
    ["from: 1.1", "from: 1.1 s", "wrong-type: This is a text. Write a number without a unit."],
  ])("reports %s as %s", (good, bad, issue) => {
    const text = (head + cell + rest).replace(good, bad);
    expect(found(text)).toContainEqual(expect.stringContaining(issue));
    expect(found(text)[0]).toMatch(/^\d+ /u);
  });

  it("reports a scenario file that cannot be read, and a setting that leads nowhere", () => {
    const file = "cells:\n  mine: { scenario: mine-cell.yaml }\n";
    expect(found(head + file + rest)).toContainEqual(
      expect.stringContaining("4 lesson-scenario: The scenario `mine-cell.yaml` cannot be read."),
    );
    const set = cell.replace("length: 2 min", "set: [stations.rihgt.steps.cool=7 s]");
    expect(found(head + set + rest)).toContainEqual(expect.stringMatching(/^5 set-/u));
  });

  it("reports what is no YAML, and an empty file", () => {
    expect(found("title: a: b")).toContainEqual(expect.stringMatching(/^1 yaml-syntax: /u));
    expect(found("")).toContainEqual(expect.stringMatching(/^1 file-empty: .* shipped lesson\.$/u));
  });

  it.each([
    ["after: drop }", "after: drop, occurrence: 900 }", "moments.close", "holds no moment `close`"],
    ["is: closing", "is: cooling", "choices", "The record gives closing, and no choice fits."],
    ["from: 0.9, below: 1.1", "from: 0.5", "choices", "The record gives 1.00 s, and no choice fits."],
    ["until: close", "until: drop", "at: close", "not in order"],
    ["{ duration: drop }", "{ sag: drop }", "drop time", "The record does not hold `drop time`."],
  ])("reports from the record that %s does not fit as %s", (good, bad, _, message) => {
    const text = (head + cell + rest).replace(good, bad).replace("from: 0.5", "from: 1.05");
    expect(findings(text)).toContainEqual(expect.stringContaining(message));
    expect(findings(text)[0]).toMatch(/^\d+ lesson-/u);
  });
});

test("every key of a lesson stands in the README of the lessons", () => {
  const keys = new Set<string>();
  const collect = (node: unknown): void => {
    if (typeof node !== "object" || node === null) return;
    for (const [key, value] of Object.entries(node)) {
      if (key === "properties") Object.keys(value as object).forEach((name) => keys.add(name));
      collect(value);
    }
  };
  collect(z.toJSONSchema(lessonKeys, { io: "input", unrepresentable: "any" }));
  expect(keys.size).toBeGreaterThan(40);
  const readme = readFileSync("scenarios/lessons/README.md", "utf8");
  expect([...keys].filter((key) => !readme.includes(`\`${key}`))).toEqual([]);
});
