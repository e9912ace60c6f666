// The printed words on continuous extrusion for the shipped bottle, with values calculated by hand [C].
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

const words = (scenario: Scenario): string => extrusionWords(scenario, idealCycle(scenario)).join(" ");

// A shot of 2 × (42 g + 30 %) = 109.2 g takes 3.57 s at 110 kg/h. Two molds of 0.7 + 0.6 + 0.2 + 0.7 + 0.5 + (7 + 7.5 + 9)/3 + 0.5
// + 0.6 s = 11.633 s come every 5.817 s: 109.2 g in 5.817 s are 67.6 kg/h.
it("a matched screw has the rate of its molds", () => {
  const scenario = read();
  expect(words(scenario)).toBe(
    "The screw is turned down from 110 kg/h to 67.6 kg/h: a parison in 5.82 s, as the molds come.",
  );
  expect(inHandWords(scenario, idealCycle(scenario))).toBe("turned down to keep step; at full rate 2.24 s away");
});

// 110 − 67.6 kg/h.
it("a screw at a fixed rate sends the rest to regrind", () => {
  const scenario = read("delivery.rate=fixed");
  expect(words(scenario)).toBe(
    "The screw makes 110 kg/h whatever the molds take: a parison in 3.57 s, a mold every 5.82 s, so that 42.4 kg/h go to regrind.",
  );
  expect(inHandWords(scenario, idealCycle(scenario))).toBeUndefined();
});

// 80 − 67.6 kg/h; 109.2 g at 80 kg/h take 4.914 s.
it("a matched screw at its slowest rate sends the rest to regrind", () => {
  expect(words(read("delivery.rateRange.min=80 kg/h"))).toBe(
    "The screw is turned down to 80 kg/h and goes no slower: a parison in 4.91 s, a mold every 5.82 s, so that 12.4 kg/h go to regrind.",
  );
});

// 109.2 g at 60 kg/h take 6.552 s.
it("a screw that is slower than the molds runs at its full rate and sends nothing to regrind", () => {
  expect(words(read("delivery.plasticatingRate=60 kg/h"))).toBe(
    "The screw turns at its full 60 kg/h: a parison in 6.55 s, a mold every 6.55 s.",
  );
});
