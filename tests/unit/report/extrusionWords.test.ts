// The printed words on continuous extrusion for the shipped bottle, with values calculated by hand [C].
import { expect, it } from "vitest";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import { extrusionWords, matchedSlackWords } from "#report/words/extrusionWords.ts";
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

// A shot of 2 × (42 g + 30 %) = 109.2 g takes 3.57 s at 110 kg/h. Two molds of 0.7 + 0.8 + 0.2 + 0.7 + 0.5 + 7.5 + 0.5 +
// 0.8 s = 11.7 s come every 5.85 s: 109.2 g in 5.85 s are 67.2 kg/h.
it("give the rate of a matched screw and its slack at full rate", () => {
  const scenario = read();
  expect(words(scenario)).toBe(
    "The screw is turned down from 110 kg/h to 67.2 kg/h to match the molds: a parison in 5.85 s.",
  );
  expect(matchedSlackWords(scenario, idealCycle(scenario))).toBe(
    "turned down to match; slack 2.28 s a shot at full rate",
  );
});

// 110 − 67.2 kg/h.
it("give the excess melt of a fixed rate", () => {
  const scenario = read("delivery.rate=fixed");
  expect(words(scenario)).toBe(
    "The screw runs at a fixed rate, 110 kg/h: a parison in 3.57 s, a mold every 5.85 s, excess melt 42.8 kg/h to regrind.",
  );
  expect(matchedSlackWords(scenario, idealCycle(scenario))).toBeUndefined();
});

// 80 − 67.2 kg/h; 109.2 g at 80 kg/h take 4.914 s.
it("give the excess melt at the lowest rate", () => {
  expect(words(read("delivery.rateRange.min=80 kg/h"))).toBe(
    "The screw runs at its lowest rate, 80 kg/h: a parison in 4.91 s, a mold every 5.85 s, excess melt 12.8 kg/h to regrind.",
  );
});

// 109.2 g at 60 kg/h take 6.552 s.
it("give no excess melt when the screw sets the pace", () => {
  expect(words(read("delivery.plasticatingRate=60 kg/h"))).toBe(
    "The screw runs at its full rate, 60 kg/h: a parison in 6.55 s, a mold every 6.55 s.",
  );
});
