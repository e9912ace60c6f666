// Holds the JSON Schema to the reading of scenarios, with the independent validator ajv in draft 2020-12.
import { readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { scenarioSchema } from "#scenario/keys/scenarioSchema.ts";
import { readScenario } from "#scenario/resolving/readScenario.ts";
import { faultyCells } from "./faultyCells.ts";
import { faultyKinds } from "./faultyKinds.ts";
import { faultyCalendar, faultyQuality, faultyStops, faultyServers, faultyTakeaway } from "./faultyStops.ts";
import { markedText } from "./faultySpec.ts";
import { faultyValues } from "./faultyValues.ts";
import { twoStations, validTexts } from "./validTexts.ts";

const accepts = new Ajv2020({ strict: true, strictRequired: false, allowUnionTypes: true }).compile(scenarioSchema());

function isAccepted(text: string): boolean {
  return accepts(parse(text));
}

it("equals the schema that is shipped with the scenarios", () => {
  const shipped = readFileSync(new URL("../../../scenarios/scenario.schema.json", import.meta.url), "utf8");
  expect(JSON.parse(shipped)).toEqual(scenarioSchema());
});

it("is a schema of draft 2020-12", () => {
  const schema = scenarioSchema();
  expect(schema["$schema"]).toBe("https://json-schema.org/draft/2020-12/schema");
  expect(new Ajv2020().validateSchema(schema)).toBe(true);
});

it("describes every key", () => {
  const undescribed: string[] = [];
  const visit = (node: unknown, path: string): void => {
    if (typeof node !== "object" || node === null) return;
    for (const [key, child] of Object.entries(node)) {
      if (key === "properties") {
        for (const [name, property] of Object.entries(child as Readonly<Record<string, object>>)) {
          if (!("description" in property) && !path.includes("empirical")) undescribed.push(`${path}.${name}`);
        }
      }
      visit(child, `${path}.${key}`);
    }
  };
  visit(scenarioSchema(), "");
  expect(undescribed).toEqual([]);
});

describe("it accepts", () => {
  it.each(validTexts)("%s", (_, text) => expect(isAccepted(text)).toBe(true));
});

const faulty = [
  ...faultyValues,
  ...faultyCells,
  ...faultyStops,
  ...faultyCalendar,
  ...faultyTakeaway,
  ...faultyServers,
  ...faultyKinds,
  ...faultyQuality,
];

describe("it refuses every fault of shape:", () => {
  it.each(faulty.filter(({ shape }) => shape))("$name", ({ edits }) => {
    expect(isAccepted(markedText(twoStations, edits).text)).toBe(false);
  });
});

describe("it accepts a fault that only reading can find:", () => {
  it.each(faulty.filter(({ shape }) => shape === false))("$name", ({ edits }) => {
    expect(isAccepted(markedText(twoStations, edits).text)).toBe(true);
  });
});

describe("it agrees with reading about flash:", () => {
  const written = (flash: string): string => twoStations.replace("flash: 30 % of part", `flash: ${flash}`);
  const isRead = (text: string): boolean =>
    readScenario(text, { name: "cell", file: "cell.yaml" }).scenario !== undefined;

  it.each(["30 % of part", "30%of shot", "30 percent of part", "0.3 of part", "0.3of part", "12 g", "0 g"])(
    "%s is valid",
    (flash) => expect([isAccepted(written(flash)), isRead(written(flash))]).toEqual([true, true]),
  );

  it.each(["30 %", "30 percent", "0.3", "percent of part", "30 % of the part", "30 g of part", "30 % of partly"])(
    "%s is not",
    (flash) => expect([isAccepted(written(flash)), isRead(written(flash))]).toEqual([false, false]),
  );
});
