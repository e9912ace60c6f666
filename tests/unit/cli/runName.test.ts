// Settings in short, and the parts of a --variant.
import { describe, expect, it } from "vitest";
import { runName, settingsInShort } from "#cli/call/runName.ts";
import { parseVariant } from "#cli/call/variants.ts";

describe("settings in short", () => {
  it.each([
    ["stations.*.steps.cool=8 s", "cool-8-s"],
    ["stations.*.steps.cool=-1 s", "cool-minus-1-s"],
    ["stations.left.steps.cool=+10 %", "left-cool-plus-10-percent"],
    ["stations.*.steps.cool = *0.9", "cool-times-0.9"],
    ["delivery.plasticatingRate=120 kg/h", "plasticating-rate-120-kg-h"],
    ["stations[0].cavities=2", "stations-0-cavities-2"],
    ["stops=[]", "stops-none"],
    ["run.seed=7", "seed-7"],
  ])("of %s are %s", (setting, short) => expect(settingsInShort([setting])).toBe(short));

  it.each([
    ["run.seed=A", "run.seed=a"],
    ["run.seed=a b", "run.seed=a-b"],
    ["delivery.maxPressure=5 MPa", "delivery.maxPressure=5 mPa"],
    ["stations.Left.steps.cool=8 s", "stations.left.steps.cool=8 s"],
    ["stations.*.steps.cool={ uniform: [7 s, 8 s] }", "stations.*.steps.cool={ uniform: [7 s], 8 s }"],
    ["stations.side 1.cavities=2", "stations.side-1.cavities=2"],
  ])("of %s and %s differ on a system that ignores case", (one, other) => {
    expect(settingsInShort([one]).toLowerCase()).not.toBe(settingsInShort([other]).toLowerCase());
  });

  it("follow the name of the scenario, at most 80 letters in all", () => {
    expect(runName("two-station", ["stations.*.steps.cool=8 s"])).toBe("two-station-cool-8-s");
    const long = ["a", "b"].map((end) => runName("x".repeat(90) + end, []));
    expect(new Set(long).size).toBe(2);
    for (const name of long) expect(name).toHaveLength(80);
  });
});

describe("a variant", () => {
  it.each([
    ["8 s: stations.*.steps.cool=8 s", "8 s", ["stations.*.steps.cool=8 s"]],
    ["a: x={ y: [1, 2]; }; z=1", "a", ["x={ y: [1, 2]; }", "z=1"]],
    ["a: run.seed='1;2'; z=\"a;b\";", "a", ["run.seed='1;2'", 'z="a;b"']],
    ["stations.*.steps.cool=8 s", "cool-8-s", ["stations.*.steps.cool=8 s"]],
    ["x={ y: 1 }", "x-y-1-", ["x={ y: 1 }"]],
    ["a:", "a", []],
  ])("%s", (text, name, set) => {
    const found = parseVariant(text);
    expect(found.set).toEqual(set);
    expect(found.name.startsWith(name)).toBe(true);
  });
});
