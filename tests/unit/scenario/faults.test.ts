// Every fault of a scenario is reported at once, with its place, its code and its remedy.
import { describe, expect, it } from "vitest";
import { readScenario } from "#scenario/resolving/readScenario.ts";
import { faultyCells } from "./faultyCells.ts";
import { faultyKinds } from "./faultyKinds.ts";
import { faultyCalendar, faultyQuality, faultyStops, faultyServers, faultyTakeaway } from "./faultyStops.ts";
import { markedText, type FaultySpec } from "./faultySpec.ts";
import { faultyTexts } from "./faultyTexts.ts";
import { faultyValues } from "./faultyValues.ts";
import { twoStations } from "./validTexts.ts";

function check({ edits, found }: FaultySpec): void {
  const { text, places } = markedText(twoStations, edits);
  const { scenario, issues } = readScenario(text, { name: "cell", file: "cell.yaml" });
  const seen = issues.map(({ code, path, place, fate, severity }) => ({ code, path, place, fate, severity }));
  expect(seen).toEqual(
    found.map(({ code, path, fate = "file", severity = "error" }, index) => {
      return { code, path, place: { file: "cell.yaml", ...places[index] }, fate, severity };
    }),
  );
  for (const [index, { says, remedy }] of found.entries()) {
    expect(issues[index]?.message).toContain(says);
    expect(issues[index]?.remedy).toContain(remedy);
  }
  const refused = found.some(({ severity }) => severity !== "hint");
  expect(scenario === undefined).toBe(refused);
}

describe.each([
  ["a text", faultyTexts],
  ["a value", faultyValues],
  ["a cell", faultyCells],
  ["a stop", faultyStops],
  ["a calendar", faultyCalendar],
  ["a takeaway", faultyTakeaway],
  ["a server", faultyServers],
  ["a kind of delivery", faultyKinds],
  ["a quality check", faultyQuality],
])("%s with a fault is reported", (_, specs) => {
  it.each(specs)("$name", check);
});

it("a screw as fast as the ram of a common accumulator is accepted, and a faster one is not", () => {
  const codesAt = (rate: string) => {
    const common = twoStations
      .replace("kind: reciprocating-screw", "kind: accumulator-head\n  accumulator: common")
      .replace("  rechargeStarts: valve-neutral\n", "")
      .replace("plasticatingRate: 110 kg/h", `plasticatingRate: ${rate}`);
    return readScenario(common, { name: "cell", file: "cell.yaml" }).issues.map(({ code }) => code);
  };
  expect(codesAt("420 kg/h")).not.toContain("values-contradict");
  expect(codesAt("420.1 kg/h")).toContain("values-contradict");
});

/** Three faults of single values for each scenario, in different lines and not in names, so that they are independent. */
function threes(): readonly (readonly [names: string, specs: readonly FaultySpec[]])[] {
  const lineOf = (spec: FaultySpec): number =>
    twoStations.slice(0, twoStations.indexOf(spec.edits[0]![0])).split("\n").length;
  const single = faultyValues.filter(
    ({ edits, found }) => edits.length === 1 && found.length === 1 && !edits[0]![0].includes("name: "),
  );
  const byLine = [...new Map(single.map((spec) => [lineOf(spec), spec])).values()];
  const others = single.filter((spec) => !byLine.includes(spec));
  return others.flatMap((first, i) => {
    const rest = byLine.filter((spec) => lineOf(spec) !== lineOf(first));
    const two = [rest[i % rest.length]!, rest[(i + 3) % rest.length]!];
    const specs = [first, ...two];
    return i < 20 ? [[specs.map(({ name }) => name).join(" + "), specs] as const] : [];
  });
}

describe("three faults in one scenario are all reported", () => {
  it.each(threes())("%s", (_, specs) => {
    const { text, places } = markedText(
      twoStations,
      specs.flatMap(({ edits }) => edits),
    );
    const { scenario, issues } = readScenario(text, { name: "cell", file: "cell.yaml" });
    const reported = issues.map(({ code, path }) => `${code} ${path}`).toSorted();
    expect(reported).toEqual(specs.flatMap(({ found }) => found.map(({ code, path }) => `${code} ${path}`)).toSorted());
    expect(issues.map(({ place }) => place)).toEqual(places.map((place) => ({ file: "cell.yaml", ...place })));
    expect(scenario).toBeUndefined();
  });
});

describe("an unreadable text has one issue", () => {
  it.each([
    ["an empty text", "", "file-empty"],
    ["blank lines", " \n\n", "file-empty"],
    ["only comments", "# a\n# b\n", "file-empty"],
    ["a NUL", "title: a\u0000b\n", "file-binary"],
    ["bytes that are not UTF-8", "title: a\uFFFDb\n", "file-encoding"],
    ["more than 250,000 characters", `# ${"x".repeat(250_000)}\n`, "file-too-large"],
    ["deeply nested brackets", "a: ".concat("[".repeat(20_000)), "yaml-depth"],
    ["an open quote", 'title: "a', "yaml-syntax"],
    ["a plain word", "hello", "wrong-type"],
    ["a list", "- a\n- b\n", "wrong-type"],
  ])("%s", (_, text, code) => {
    const { scenario, issues } = readScenario(text, { name: "cell", file: "cell.yaml" });
    expect(scenario).toBeUndefined();
    expect(issues.map((issue) => issue.code)).toEqual([code]);
    expect(issues[0]?.place?.file).toBe("cell.yaml");
    expect(issues[0]?.remedy).toMatch(/\w/u);
  });
});

it("reports a cell whose steps take no time", () => {
  const text = `format: 1
product: { partMass: 42 g }
delivery: { kind: reciprocating-screw, recharge: 0 s, drop: 0 s }
valve: { shift: 0 s }
stations: { cavities: 1, steps: { close: 0 s, blow: 0 s, cool: 0 s, vent: 0 s, open: 0 s, remove: { time: 0 s } } }
`;
  const { issues } = readScenario(text, { name: "cell", file: "cell.yaml" });
  expect(issues.map(({ code, fate }) => [code, fate])).toEqual([["zero-cycle", "cell"]]);
  const timed = readScenario(text.replace("cool: 0 s", "cool: 1 s"), { name: "cell", file: "cell.yaml" });
  expect(timed.issues).toEqual([]);
});
