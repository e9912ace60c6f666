// The question of a scenario is its first comment line for readers.
import { expect, it } from "vitest";
import { questionOf } from "#report/page/questionOf.ts";
import { shippedText } from "../../support/reported.ts";

it.each([
  ["# yaml-language-server: $schema=./x.json\n# Does it pay?\nformat: 1\n", "Does it pay?"],
  ["#Does it pay?\r\nformat: 1\r\n", "Does it pay?"],
  ["format: 1\n# Does it pay?\n", undefined],
  ["# yaml-language-server: $schema=./x.json\n\nformat: 1\n", undefined],
  ["", undefined],
])("of %j is %j", (text, question) => {
  expect(questionOf(text)).toBe(question);
});

it("of a shipped scenario states that cell and product are invented", () => {
  expect(questionOf(shippedText("two-station"))).toMatch(/\? Cell and product are invented\.$/u);
});
