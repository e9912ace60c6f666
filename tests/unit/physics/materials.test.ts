// Holds the catalog of plastics to its sources, to its own ranges and to consistent physics.
import { describe, expect, test } from "vitest";
import type { Datum } from "#physics/materials/datum.ts";
import type { Material } from "#physics/materials/material.ts";
import { materials } from "#physics/materials/materials.ts";
import { ownMaterial } from "#physics/materials/ownMaterial.ts";

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
  // Crawford, Plastics Engineering, 3rd ed., table 1.8 [R]: kg/m³, J/(kg K), W/(m K) of the solid.
  ["HDPE", 950, 2200, 0.25],
  ["LDPE", 920, 2200, 0.24],
  ["PP", 905, 2000, 0.2],
  ["PVC-U", 1400, 900, 0.16],
  ["PC", 1150, 1200, 0.2],
])("solid %s has Crawford's values in its ranges", (name, density, specificHeat, conductivity) => {
  const solid = named(name);
  expectInside(solid.density, density);
  expectInside(solid.specificHeat, specificHeat);
  expectInside(solid.conductivity, conductivity);
});

function expectInside({ low, high }: Datum, published: number): void {
  expect(published).toBeGreaterThanOrEqual(low);
  expect(published).toBeLessThanOrEqual(high);
}

// Gross melt fracture sets in at a wall shear stress of 0.1 to 0.3 MPa: Vlachopoulos & Alam, Polymer Engineering and Science 12 (1972)
// 184 [M].
test.each([...materials.values()])("$name fractures within the published range of stresses", ({ fractureStress }) => {
  expect([fractureStress.low, fractureStress.high]).toEqual([0.1e6, 0.3e6]);
});

describe("published thermal values", () => {
  // Chang, Journal of Research of the National Bureau of Standards 82 (1977) 9 [R]: c_p = 10 + 0.166 T J/(K mol) of PVC from 80 to
  // 340 K, glass transition 355 K; 62.498 g/mol [M]. Enthalpy of order in PVC: 1.5 cal/g [R, abstract of a paper on it].
  test("of PVC agree with calorimetry", () => {
    const { specificHeat, transitionTemperature, heatOfFusion } = named("PVC-U");
    const measured = (kelvin: number) => ((10 + 0.166 * kelvin) / 62.498) * 1000;
    expectInside(specificHeat, measured(298.15));
    expect(Math.abs(specificHeat.value / measured(320) - 1)).toBeLessThan(0.02);
    expect(transitionTemperature.value).toBeCloseTo(355 - 273.15, 0);
    expect(Math.abs(heatOfFusion.value / (1.5 * 4184) - 1)).toBeLessThan(0.06);
  });

  // NIST Chemistry WebBook, condensed phase thermochemistry of polyethylene [R]: two linear samples 26.29 and 26.02,
  // high-pressure polyethylene 32.47 J/(mol K) at 25 °C (Dainton et al., 1962); 14.027 g/mol of CH₂ [M].
  test("of polyethylene at 25 °C are in the ranges", () => {
    for (const linear of [26.29, 26.02]) expectInside(named("HDPE").specificHeat, (linear / 14.027) * 1000);
    expectInside(named("LDPE").specificHeat, (32.47 / 14.027) * 1000);
  });

  // Martienssen and Warlimont, Handbook of Condensed Matter and Materials Data, 2005, table 3.3-6 [R]: PP at 20, 50, 100 °C
  // 1.68, 1.92, 2.35 kJ/(kg K) and 0.22 W/(m K), at 150 °C 0.20 W/(m K).
  test("of PP agree with a handbook", () => {
    const { specificHeat, conductivity } = named("PP");
    for (const published of [1680, 1920, 2350]) expectInside(specificHeat, published);
    for (const published of [0.22, 0.2]) expectInside(conductivity, published);
  });

  // Thermal Properties of Polymers, a collection of measurements [R]. HDPE: 0.94-0.96 g/cm³, 1.8-2.7 J/(g K), 0.33-0.53 W/(m K),
  // melting at 125-135 °C with 201 J/g. LDPE: peak at 112 °C. PC: 1.20-1.24 g/cm³, 1.17-1.50 J/(g K), 0.19-0.21 W/(m K), glass
  // transition at 147 °C.
  test("of HDPE, LDPE and PC agree with measurements", () => {
    const [hdpe, ldpe, pc] = [named("HDPE"), named("LDPE"), named("PC")];
    for (const published of [940, 960]) expectInside(hdpe.density, published);
    expect([hdpe.specificHeat.low, hdpe.specificHeat.high]).toEqual([1800, 2700]);
    for (const published of [0.33, 0.53]) expectInside(hdpe.conductivity, published);
    expect([hdpe.transitionTemperature.low, hdpe.transitionTemperature.high]).toEqual([125, 135]);
    expect(Math.abs(hdpe.heatOfFusion.value / 201e3 - 1)).toBeLessThan(0.01);
    expectInside(ldpe.transitionTemperature, 112);
    for (const published of [1200, 1240]) expectInside(pc.density, published);
    expect([pc.specificHeat.low, pc.specificHeat.high]).toEqual([1170, 1500]);
    for (const published of [0.19, 0.21]) expectInside(pc.conductivity, published);
    expect(pc.transitionTemperature.value).toBe(147);
  });
});

describe("each plastic", () => {
  const all = [...materials.values()].map((material) => [material.name, material] as const);

  test.each(all)("%s has values near the middle of their ranges", (_name, material) => {
    for (const property of [
      "density",
      "conductivity",
      "specificHeat",
      "meltSpecificHeat",
      "coolingDiffusivity",
    ] as const) {
      const { value, low, high } = material[property];
      expect(Math.abs(value - (low + high) / 2), property).toBeLessThan(0.2 * (high - low));
    }
  });

  // α = k/(ρ Δh/ΔT) between melt and demold temperature, with the mean of solid and melt density, by hand [C].
  test.each(all)("%s has conductivity, density, enthalpy and diffusivity that belong together", (_name, material) => {
    const [hot, cold] = [material.meltTemperature.value, material.demoldTemperature.value];
    const change = material.transitionTemperature.value;
    const heat =
      material.meltSpecificHeat.value * (hot - change) +
      material.heatOfFusion.value +
      material.specificHeat.value * (change - cold);
    const density = (material.density.value + material.meltDensity.value) / 2;
    const diffusivity = material.conductivity.value / ((density * heat) / (hot - cold));
    expect(Math.abs(diffusivity / material.coolingDiffusivity.value - 1)).toBeLessThan(0.06);
  });
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
    ["PVC-U", [1250, 1300], [0.8e-7, 1.1e-7], [180, 205], [10, 30], [45, 60]],
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
