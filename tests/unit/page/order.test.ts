// The form of the place Order: what it takes from a scenario, what it keeps, and the call that it stands for.
import { describe, expect, it } from "vitest";
import { shellWord } from "#foundation/shellWord.ts";
import { callText } from "#page/order/callText.ts";
import { callOf, formOf, productsOf, type TypedForm } from "#page/order/form.ts";
import { keptOf, withKept } from "#page/order/kept.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";
import { shippedText } from "../../support/reported.ts";

const friday = scenarioOf(shippedText("order-by-friday"));
const plain = scenarioOf(cellText(1));
const own = formOf(friday);
const callWith = (typed: TypedForm): string =>
  callText(
    { scenario: { name: "a", file: "a.yaml", text: "", beside: {}, set: [] }, call: callOf(own, typed), applied: [] },
    false,
    "si",
  );

describe("the form of an order", () => {
  it("shows what the scenario has", () => {
    expect(own).toEqual({
      lines: [
        { quantity: "150000", product: "natural bottle" },
        { quantity: "50000", product: "blue bottle" },
      ],
      due: "2026-12-04 14:00",
      start: "2026-11-30 06:00",
      shifts: "",
      chance: "95 %",
    });
    expect(productsOf(friday)).toEqual(["natural bottle", "blue bottle"]);
    expect(formOf(plain)).toMatchObject({ lines: [{ quantity: "", product: "" }], due: "", start: "" });
    expect(productsOf(plain)).toEqual([]);
  });

  it.each([
    ["orders=[{ quantity: 10 parts, due: 2 d }]", "2 d"],
    ["orders=[{ quantity: 10 parts, due: 90 min }]", "5400 s"],
    ["orders=[{ quantity: 10 parts, due: 3 h }]", "3 h"],
    ["orders=[{ quantity: 10 parts }]", ""],
  ])("writes the due date of %s as the call takes it: %s", (set, due) => {
    expect(formOf(scenarioOf(cellText(1), set)).due).toBe(due);
  });

  it.each([
    [{}, ""],
    [{ chance: "80 %" }, ' --chance "80 %"'],
    [{ due: "Friday 12:00" }, ' --due "Friday 12:00"'],
    // Without a due date the orders are given anew, since those of the file have one.
    [{ due: "" }, ' --order "150000 parts of natural bottle" --order "50000 parts of blue bottle"'],
    // New orders take the place of those of the file together with their due date.
    [
      { lines: [{ quantity: "7", product: "blue bottle" }] },
      ' --order "7 parts of blue bottle" --due "2026-12-04 14:00"',
    ],
    [{ lines: [{ quantity: "7 kg", product: "" }] }, ' --order "7 kg" --due "2026-12-04 14:00"'],
    [{ lines: [{ quantity: " ", product: "" }] }, ""],
    // A pattern of work shifts needs the start.
    [{ shifts: "24 h, every day" }, ' --shifts "24 h, every day" --start "2026-11-30 06:00" --due "2026-12-04 14:00"'],
    [{ start: "2026-12-01" }, ' --start "2026-12-01" --due "2026-12-04 14:00"'.replace('"2026-12-01"', "2026-12-01")],
  ] as const)("stands for a call: %j", (typed, options) => {
    expect(callWith(typed)).toBe(`blowcell promise a.yaml${options}`);
  });
});

describe("what is kept in the address", () => {
  const applied = [{ name: "one station more; at once", settings: ["stations.count=4", "a={ b: 'c; d of e' }"] }];
  const kept = {
    typed: { lines: [{ quantity: "1", product: "blue of bottles" }], due: "", chance: "80 %" },
    applied,
    levers: true,
  };

  it("comes back as it was", () => {
    const values = withKept({ set: ["stations.count=2"] }, kept, own);
    expect(keptOf(values)).toEqual(kept);
    // Values of other places stay.
    expect(values["set"]).toEqual(["stations.count=2"]);
  });

  it("is nothing where all is as in the scenario", () => {
    expect(withKept({}, { typed: own, applied: [], levers: false }, own)).toEqual({});
  });
});

describe("a word of a shell's call", () => {
  it.each([
    ["a.yaml", "a.yaml"],
    ["5 d", '"5 d"'],
    ["cool=*0.9", '"cool=*0.9"'],
    ['a="b"', `'a="b"'`],
    ["it's $5", String.raw`'it'\''s $5'`],
    ["", '""'],
  ])("of %s is %s", (text, word) => {
    expect(shellWord(text)).toBe(word);
  });
});
