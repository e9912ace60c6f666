// What is said of a screw that never stops, on the shipped bottle, by hand.
import { expect, it } from "vitest";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import { extrusionWords, inHandWords } from "#report/words/extrusionWords.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { shippedText } from "../../support/reported.ts";

function read(...set: readonly string[]): Scenario {
  const { scenario, issues } = readSettled(shippedText("bottle-continuous"), {
    name: "bottle-continuous",
    file: "bottle-continuous.yaml",
    set,
  });
  if (!scenario) throw new Error(issues.map(({ message }) => message).join("\n"));
  return scenario;
}

const said = (scenario: Scenario): string => extrusionWords(scenario, idealCycle(scenario)).join(" ");

// By hand: a shot of 2 × (42 g + 30 %) = 109.2 g; at 110 kg/h 3.57 s. Two molds of 0.7 + 0.6 + 0.2 + 0.7 + 0.5 + (7 + 7.5 + 9)/3 + 0.5 + 0.6 s
// = 11.633 s come every 5.817 s: 109.2 g in 5.817 s are 67.6 kg/h.
it("a matched screw keeps step with its molds, and has the rest in hand", () => {
  const scenario = read();
  expect(said(scenario)).toBe(
    "The screw is turned down from 110 kg/h to 67.6 kg/h: a parison in 5.82 s, as the molds come.",
  );
  expect(inHandWords(scenario, idealCycle(scenario))).toBe("turned down to keep step; at full rate 2.24 s away");
});

// 110 − 67.6 kg/h.
it("a fixed one wastes what the molds do not take", () => {
  const scenario = read("delivery.rate=fixed");
  expect(said(scenario)).toBe(
    "The screw makes 110 kg/h whatever the molds take: a parison in 3.57 s, a mold every 5.82 s, so that 42.4 kg/h go to regrind.",
  );
  expect(inHandWords(scenario, idealCycle(scenario))).toBeUndefined();
});

// 80 − 67.6 kg/h; 109.2 g at 80 kg/h take 4.914 s.
it("one that goes no slower wastes the rest", () => {
  expect(said(read("delivery.rateRange.min=80 kg/h"))).toBe(
    "The screw is turned down to 80 kg/h and goes no slower: a parison in 4.91 s, a mold every 5.82 s, so that 12.4 kg/h go to regrind.",
  );
});

// 109.2 g at 60 kg/h take 6.552 s.
it("one that is too small turns at its full rate and wastes nothing", () => {
  expect(said(read("delivery.plasticatingRate=60 kg/h"))).toBe(
    "The screw turns at its full 60 kg/h: a parison in 6.55 s, a mold every 6.55 s.",
  );
});
