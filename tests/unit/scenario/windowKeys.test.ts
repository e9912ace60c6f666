// Each row of the key table and of the material table is a scenario key, read at its path into the unit of the process window.
import { describe, expect, it } from "vitest";
import { dimensions, type Dimension } from "#foundation/dimension.ts";
import { materialTable, type PropertyRow } from "#physics/materials/materialTable.ts";
import { completeInput } from "#physics/window/windowInput.ts";
import type { WindowKeyRow } from "#physics/window/windowKeyRow.ts";
import { windowKeys, type QuantityKey } from "#physics/window/windowKeys.ts";
import type { ProcessSpec } from "#scenario/scenario.ts";
import { scenarioSchema } from "#scenario/keys/scenarioSchema.ts";
import { scenarioOf, shippedText } from "../../support/reported.ts";

const text = shippedText("two-station");

function processOf(set: readonly string[]): ProcessSpec {
  const process = scenarioOf(text, "two", set).stations[0]?.process;
  if (process === undefined) throw new Error("no process");
  return process;
}

// The example of each dimension in the unit of the window, converted by hand [C]: SI units, and °C for temperatures.
const converted: Partial<Record<Dimension, number>> = {
  time: 7.5,
  mass: 0.042,
  rate: 110 / 3600,
  length: 0.9e-3,
  area: 0.018,
  volume: 0.75e-3,
  pressure: 7e5,
  force: 6e4,
  temperature: 65,
  temperatureDifference: 5,
  share: 0.2,
  density: 760,
  conductivity: 0.25,
  diffusivity: 0.12e-6,
  specificHeat: 2200,
  specificEnergy: 0.25 * 3.6e6,
  heatTransfer: 1000,
  thermalResistance: 0.5e-3,
  molarEnergy: 28e3,
  viscosity: 2e4,
  lineLoad: 1e5,
  power: 45e3,
  speed: 40 / 60,
  angle: 17.7,
  // 5 dm³/(s bar) are 5e-3 m³ over 1e5 Pa a second.
  conductance: 5e-8,
};

// Examples for keys where that of the dimension would contradict the rest of the scenario.
const ownExamples: Readonly<Record<string, readonly [written: string, value: number]>> = {
  "product.meltTemperature": ["200 °C", 200],
  "product.moldTemperature": ["20 °C", 20],
  "product.thicknessSwell": ["180 %", 1.8],
  "product.wall.mean": ["0.6 mm", 0.6e-3],
  "product.insideAir.temperature": ["25 °C", 25],
  "delivery.shotCapacity": ["0.3 kg", 0.3],
  meltTemperature: ["200 °C", 200],
  moldTemperature: ["20 °C", 20],
};

function exampleOf(name: string, dimension: Dimension): readonly [written: string, value: number] {
  const value = converted[dimension];
  if (value === undefined) throw new Error(`no value for ${dimension}`);
  return ownExamples[name] ?? [dimensions[dimension].example, value];
}

const rows: readonly (readonly [string, WindowKeyRow])[] = Object.entries(windowKeys);
const quantities = rows.flatMap(([path, { from, dimension, required }]) =>
  from !== undefined || dimension === "count" ? [] : [{ path: path as QuantityKey, dimension, required }],
);
const sectionOf = (path: string): string => path.slice(0, path.lastIndexOf("."));
const setting = (path: string, dimension: Dimension): string =>
  `${path.replace(/^station\./u, "stations.left.")}=${exampleOf(path, dimension)[0]}`;

describe("a row of the key table", () => {
  it.each(quantities)("$path is read at its path, in the unit of the window", ({ path, dimension }) => {
    const siblings = quantities.filter(
      (other) => other.required && other.path !== path && sectionOf(other.path) === sectionOf(path),
    );
    const settings = [...siblings, { path, dimension }].map((each) => setting(each.path, each.dimension));
    const read = processOf(settings).values[path];
    expect(read).toBeDefined();
    expect((read ?? 0) / exampleOf(path, dimension)[1]).toBeCloseTo(1, 9);
  });

  // A ratio of two lengths is the same number as a plain ratio and in percent.
  it.each([
    ["product.thicknessSwell=2", "product.thicknessSwell", 2],
    ["product.thicknessSwell=200 %", "product.thicknessSwell", 2],
    ["product.sagLimit=0.08", "product.sagLimit", 0.08],
    ["product.airCriticalRatio=0.4", "product.airCriticalRatio", 0.4],
    ["product.flash=0.3 of part", "product.flash", 0.0126],
    // By hand [C]: a quarter of the shot is a third of the part.
    ["product.flash=0.25 of shot", "product.flash", 0.014],
  ] as const)("is a ratio or a share: %s", (written, path, value) => {
    expect(processOf([written]).values[path]).toBeCloseTo(value, 12);
  });

  it("has its default and the reason in the schema", () => {
    const schema = JSON.stringify(scenarioSchema());
    const replaced = rows.filter(([, { from, otherwise }]) => from === undefined && otherwise !== undefined);
    expect(replaced.length).toBeGreaterThan(0);
    for (const [, { otherwise }] of replaced) {
      expect(schema).toContain(`Where absent: ${otherwise?.words} (${otherwise?.reason}).`);
    }
  });

  it("has a meaning in complete sentences", () => {
    for (const [path, { meaning }] of rows) expect(`${path}: ${meaning}`).toMatch(/: [A-Z].*\.$/u);
  });
});

describe("keys of another form", () => {
  // By hand [C]: 30 % of 42 g; a mean of 110 kg/h.
  it("give their number to the window", () => {
    const { values } = processOf([]);
    expect(values["product.flash"]).toBeCloseTo(0.0126, 12);
    expect(values["station.cavities"]).toBe(2);
    expect(values["delivery.plasticatingRate"]).toBeCloseTo(110 / 3600, 12);
  });
});

describe("a number that is not given", () => {
  it("is calculated from others when its row has a formula", () => {
    // By hand [C]: 30 mm − 2 × 1.5 mm.
    const { material, values } = processOf(["product.die={ diameter: 30 mm, gap: 1.5 mm }"]);
    const complete = completeInput({ material, ...values });
    expect(complete["product.die.mandrel"]).toBeCloseTo(0.027, 12);
    expect(complete["delivery.matchedRate"]).toBe(values["delivery.plasticatingRate"]);
    // Without a gap there is no mandrel.
    expect(completeInput({ material, "product.die.diameter": 0.03 })["product.die.mandrel"]).toBeUndefined();
  });

  it("comes from the material or from its row, and a given number is kept", () => {
    const { material } = processOf([]);
    const complete = completeInput({ material, "product.moldTemperature": 33 });
    expect(complete["product.moldTemperature"]).toBe(33);
    expect(complete["product.demoldTemperature"]).toBe(material.demoldTemperature.value);
    expect(complete["product.airCriticalRatio"]).toBe(0.3);
    expect(complete["station.moldContact"]).toBe(1000);
    expect(complete.assumed).toContain("station.moldContact");
    expect(complete.assumed).not.toContain("product.moldTemperature");
  });
});

describe("a row of the material table", () => {
  const properties = (
    Object.entries(materialTable) as readonly (readonly [keyof typeof materialTable, PropertyRow])[]
  ).map(([property, { key = property, dimension }]) => ({ property, key, dimension }));

  it.each(properties)("$property is replaced by `material.$key`", ({ property, key, dimension }) => {
    const [written, value] = exampleOf(key, dimension);
    const { material } = processOf([`product.material={ name: HDPE, ${key}: ${written} }`]);
    const own = material[property];
    expect((own?.value ?? 0) / value).toBeCloseTo(1, 9);
    expect([own?.low, own?.high, own?.source]).toEqual([own?.value, own?.value, "the scenario"]);
  });
});

it.each(["product.wall.mean", "product.wall.thickest"])("%s cannot be below a thousandth of a millimeter", (key) => {
  expect(() => scenarioOf(text, "two", [`${key}=0.0005 mm`])).toThrow(key.split(".").at(-1));
});
