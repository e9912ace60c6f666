// Every formula of the room documents its units, range and source, and its example is correct.
import { createContext, runInContext } from "node:vm";
import { describe, expect, it } from "vitest";
import { codeUnder, projectFolder } from "../../house/sourceFiles.ts";
import { docComments, exportedFunctions, sourcePattern, type DocComment } from "./docComment.ts";
import { halfDigit } from "./printed.ts";

/** Exported functions that are parts of formulas or of the process window, and no formulas themselves. */
const notFormulas = new Set([
  "dataFrom",
  "contactWeight",
  "temperatureCourse",
  "profileCourse",
  "profileAt",
  "profileSlope",
  "profileMean",
  "modeValue",
  "modeSlope",
  "helixOf",
  "windowRule",
  "rangeOfPart",
  "completeInput",
  "temperaturesOf",
  "meltTemperature",
  "processWindow",
  "windowFacts",
  "missingRows",
  "windowFacts",
  "fillSeconds",
  "inflationTime",
  "knows",
  "phasesOf",
  "moldHeat",
  "moldTemperature",
  "coolingRanges",
  "wallOf",
  "shotCooling",
]);

const files = codeUnder("src/physics");
const formulas = files.flatMap(({ text }) => docComments(text)).filter(({ name }) => !notFormulas.has(name));
const cases = formulas.map((formula): [string, DocComment] => [formula.name, formula]);

type Room = Readonly<Record<string, unknown>>;
const modules: readonly Room[] = await Promise.all(
  files.map(({ path }) => import(/* @vite-ignore */ `${projectFolder}${path}`)),
);
const room: Room = Object.assign({}, ...modules);

function faultOfExample(example: DocComment["examples"][number], world: Room): string | undefined {
  const value: unknown = runInContext(`(${example.code})`, createContext({ ...world }));
  const isNear =
    typeof value === "number" && Math.abs(value - Number(example.value)) <= 1.000001 * halfDigit(example.value);
  return isNear ? undefined : `${example.code} is ${String(value)}, not ${example.value}`;
}

function faultsOf(formula: DocComment): readonly string[] {
  const { sentence, sections, examples } = formula;
  const missing = ["Units", "Shape", "Holds for", "Source", "Throws"].filter((word) => !sections.get(word));
  const source = sections.get("Source") ?? "";
  return [
    ...missing.map((word) => `no ${word}`),
    ...(/^[A-Z0-9].+[.]$/.test(sentence) ? [] : ["does not open with one sentence"]),
    ...(formula.formula.length > 0 ? [] : ["shows no formula"]),
    ...(sourcePattern.test(source) ? [] : [`names no place in a source: ${source}`]),
    ...(examples.length > 0 ? [] : ["has no example"]),
    ...(examples.some(({ code }) => code.includes(formula.name)) ? [] : ["does not show itself"]),
  ];
}

describe("the formulas of the room", () => {
  it("are all documented, except the listed parts", () => {
    const all = files.flatMap(({ text }) => exportedFunctions(text));
    const bare = all.filter((name) => !notFormulas.has(name) && !formulas.some((formula) => formula.name === name));
    expect(bare).toEqual([]);
    expect([...notFormulas].filter((name) => !all.includes(name))).toEqual([]);
    expect(formulas.length).toBeGreaterThan(35);
  });

  it.each(cases)("%s has its sections and a source", (_name, formula) => {
    expect(faultsOf(formula)).toEqual([]);
  });

  it.each(cases)("%s gives the value of its example", (_name, formula) => {
    expect(formula.examples.map((example) => faultOfExample(example, room)).filter(Boolean)).toEqual([]);
  });
});

describe("the test of doc comments", () => {
  const doc = (lines: string) =>
    docComments(
      `/**\n${lines
        .split("\n")
        .map((line) => ` * ${line}\n`)
        .join("")} */\nexport function half(x: number) {`,
    );
  const good = `Half of it.\n\n    x/2\n\nUnits: m.\nShape: linear.\nHolds for: all.
Source: Author, Title, 1999, section 2\nThrows: nothing.\n\n@example\nhalf(3) // 1.5`;

  it("passes a complete comment", () => {
    expect(doc(good).flatMap(faultsOf)).toEqual([]);
  });

  it.each([
    ["Units: m.", "", "no Units"],
    ["Throws: nothing.", "", "no Throws"],
    ["1999, section 2", "a fine book", "names no place"],
    ["    x/2", "", "shows no formula"],
    ["half(3) // 1.5", "", "has no example"],
    ["half(3) // 1.5", "third(3) // 1.5", "does not show itself"],
  ])("fails without %s", (piece, instead, fault) => {
    const faults = doc(good.replace(piece, instead)).flatMap(faultsOf);
    expect(faults.join()).toContain(fault);
  });

  it("fails on a wrong example", () => {
    const world = { half: (x: number) => x / 2 };
    expect(faultOfExample({ code: "half(3)", value: "1.5" }, world)).toBeUndefined();
    expect(faultOfExample({ code: "half(3)", value: "1.6" }, world)).toContain("is 1.5");
  });
});
