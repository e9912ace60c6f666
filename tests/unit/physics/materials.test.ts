// Holds the catalog of plastics to its sources, to its own ranges and to consistent physics.
import { describe, expect, test } from "vitest";
import type { Datum } from "#physics/materials/datum.ts";
import type { Material } from "#physics/materials/material.ts";
import { materials } from "#physics/materials/materials.ts";
import { ownMaterial } from "#physics/materials/ownMaterial.ts";
import { expectPrinted } from "./printed.ts";

function named(name: string): Material {
  const found = materials.get(name);
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
}

const isDatum = (value: unknown): value is Datum =>
  typeof value === "object" && value !== null && "confidence" in value;

const data: readonly (readonly [string, Datum])[] = [...materials.values()].flatMap((material) =>
  Object.entries(material).flatMap(([property, value]) =>
    isDatum(value) ? [[`${material.name} ${property}`, value] as const] : [],
  ),
);

test("the catalog contains six plastics of blow molding", () => {
  expect([...materials.keys()]).toEqual(["HDPE", "LDPE", "PP", "PVC-U", "PETG", "PC"]);
});

test.each([
  // Crawford, Plastics Engineering, 3rd ed., table 1.8 [R]: kg/m³, J/(kg K), W/(m K).
  ["HDPE", 950, 2200, 0.25],
  ["LDPE", 920, 2200, 0.24],
  ["PP", 905, 2000, 0.2],
  ["PVC-U", 1400, 900, 0.16],
  ["PC", 1150, 1200, 0.2],
])("solid %s has Crawford's values", (name, density, specificHeat, conductivity) => {
  const solid = named(name);
  expect([solid.density.value, solid.specificHeat.value, solid.conductivity.value]).toEqual([
    density,
    specificHeat,
    conductivity,
  ]);
  expect([solid.density.confidence, solid.specificHeat.confidence, solid.conductivity.confidence]).toEqual([
    "read",
    "read",
    "read",
  ]);
});

test("diffusivity is computed, because the printed column contradicts the other columns", () => {
  // Crawford, Plastics Engineering, 3rd ed., table 1.8 [R] prints 1.57e-7 for HDPE and 0.65e-7 for PP. The values below are
  // k/(ρ c) [C].
  const of = ({ conductivity, density, specificHeat }: Material) =>
    conductivity.value / (density.value * specificHeat.value);
  expectPrinted(of(named("HDPE")), "1.20e-7");
  expectPrinted(of(named("PP")), "1.10e-7"); // 0.20/(905 · 2000) = 1.10497e-7
  expect([...materials.values()].filter((material) => "diffusivity" in material)).toEqual([]);
});

describe("melt values and ranges", () => {
  // Osswald et al., International Plastics Handbook, 2006; Lee, Blow Molding Handbook, 2nd ed., 2006; ISO 1133 [M, medium
  // confidence].
  const rows: readonly (readonly [
    string,
    readonly number[],
    readonly number[],
    readonly number[],
    readonly number[],
    readonly number[],
  ])[] = [
    ["HDPE", [760], [0.9e-7, 1.2e-7], [170, 210], [5, 20], [50, 80]],
    ["LDPE", [760], [0.9e-7, 1.1e-7], [140, 180], [5, 20], [45, 65]],
    ["PP", [740], [0.6e-7, 0.9e-7], [200, 235], [10, 30], [60, 90]],
    ["PVC-U", [1250, 1300], [0.9e-7, 1.1e-7], [180, 205], [10, 30], [45, 60]],
    ["PETG", [1100, 1150], [0.9e-7, 1.0e-7], [220, 250], [10, 30], [50, 65]],
    ["PC", [1020, 1080], [1.0e-7, 1.3e-7], [240, 280], [50, 90], [100, 125]],
  ];
  test.each(rows)("of %s agree with the handbooks", (name, density, diffusivity, melt, mold, demold) => {
    const material = named(name);
    const range = (datum: Datum) => [datum.low, datum.high];
    const melted = density.length === 1 ? [material.meltDensity.value] : range(material.meltDensity);
    expect(melted).toEqual(density);
    expect(range(material.coolingDiffusivity)).toEqual(diffusivity);
    expect(range(material.meltTemperature)).toEqual(melt);
    expect(range(material.moldTemperature)).toEqual(mold);
    expect(range(material.demoldTemperature)).toEqual(demold);
  });

  test("of HDPE have the published ranges of zero-shear viscosity and fracture stress", () => {
    // Blow molding HDPE 2e4-1e6 Pa s at 190 °C: Osswald et al., International Plastics Handbook, 2006 [M]. 0.1-0.3 MPa:
    // Vlachopoulos and Alam, Polymer Engineering and Science 12 (1972) 184 [M].
    const { zeroShearViscosity, fractureStress } = named("HDPE");
    expect([zeroShearViscosity.low, zeroShearViscosity.high]).toEqual([2e4, 1e6]);
    expect([fractureStress.low, fractureStress.high]).toEqual([0.1e6, 0.3e6]);
  });

  test("give HDPE a melt volume a quarter larger than the solid's", () => {
    // By hand [C]: 950 kg/m³ / 760 kg/m³ = 1.25.
    expect(named("HDPE").density.value / named("HDPE").meltDensity.value).toBeCloseTo(1.25, 2);
  });

  test("limit the time at heat of rigid PVC only", () => {
    expect([...materials.values()].filter(({ timeAtHeat }) => timeAtHeat).map(({ name }) => name)).toEqual(["PVC-U"]);
  });
});

test.each(data)("%s is within its range and has a source", (_name, datum) => {
  expect(datum.low).toBeLessThanOrEqual(datum.value);
  expect(datum.high).toBeGreaterThanOrEqual(datum.value);
  expect(datum.low).toBeGreaterThanOrEqual(0);
  expect(datum.source).toMatch(datum.confidence === "read" ? /\d{4}, table/ : /from memory of .*(?:19|20)\d\d|ISO/);
});

test("every plastic has melt, demold and mold temperatures in falling order, and a melt lighter than the solid", () => {
  for (const { meltTemperature, demoldTemperature, moldTemperature, meltDensity, density } of materials.values()) {
    expect(meltTemperature.low).toBeGreaterThan(demoldTemperature.high);
    expect(demoldTemperature.low).toBeGreaterThan(moldTemperature.value);
    expect(meltDensity.value).toBeLessThan(density.value);
  }
});

test("every plastic has a lower viscosity in the die than in the hanging parison", () => {
  for (const { dieViscosity, zeroShearViscosity, powerLawIndex } of materials.values()) {
    expect(dieViscosity.value).toBeLessThan(zeroShearViscosity.value);
    expect(powerLawIndex.high).toBeLessThan(1);
  }
});

test("a user's own value replaces the catalog's value and no other", () => {
  const own = ownMaterial(named("HDPE"), { zeroShearViscosity: 3e5 });
  expect(own.zeroShearViscosity).toMatchObject({ value: 3e5, low: 3e5, high: 3e5, source: "the scenario" });
  expect(own.meltDensity).toEqual(named("HDPE").meltDensity);
});
