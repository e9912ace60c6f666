// Holds sag, shear and length of the parison to independent integrals, by hand and to published viscosities.
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { annularDie } from "#physics/parison/annularDie.ts";
import { annularShearRate } from "#physics/parison/annularShearRate.ts";
import { deliveredSag, type Hanging } from "#physics/parison/deliveredSag.ts";
import { longestDrop } from "#physics/parison/longestDrop.ts";
import { parisonFlow } from "#physics/parison/parisonFlow.ts";
import { parisonLength } from "#physics/parison/parisonLength.ts";
import { powerLawShearRate } from "#physics/parison/powerLawShearRate.ts";
import { sagConstant } from "#physics/parison/sagConstant.ts";
import { shortestDrop } from "#physics/parison/shortestDrop.ts";
import { wallShearStress } from "#physics/parison/wallShearStress.ts";
import { firstOrderSag, hungSag } from "./sagByHand.ts";
import { materials } from "#physics/materials/materials.ts";
import { ownMaterial } from "#physics/materials/ownMaterial.ts";
import { materialAt } from "#physics/parison/materialAt.ts";
import { viscosityShift } from "#physics/parison/viscosityShift.ts";
import { expectPrinted } from "./printed.ts";

/** Illustrative inputs. */
const melt = { meltDensity: 760, zeroShearViscosity: 20_000 };
/** The reference values use g = 9.81 m/s²; a viscosity lower by the same factor compensates that. */
const printedMelt = { ...melt, zeroShearViscosity: (20_000 * 9.80665) / 9.81 };
const die = annularDie(0.03, 0.027);
const hung: Hanging = { length: 0.3, delivery: 0, hold: 1.8 };
const delivered: Hanging = { length: 0.3, delivery: 1.8, hold: 0 };
const waiting: Hanging = { length: 0.3, delivery: 1.8, hold: 0.7 };

describe("the sag", () => {
  // Weight against Newtonian elongation, integrated independently of this project [C], with the viscosity of Trouton, On the
  // coefficient of viscous traction, Proc. R. Soc. A 77 (1906) 426 [M].
  test("has the computed value for a parison that hangs as a whole for 1.8 s", () => {
    expectPrinted(100 * hungSag(printedMelt, 0.3, 1.8), "3.513");
    expectPrinted(100 * deliveredSag(printedMelt, hung), "3.513");
    expectPrinted(100 * firstOrderSag(printedMelt, hung), "3.355");
  });

  test("has the computed value for a parison delivered in 1.8 s", () => {
    expectPrinted(100 * deliveredSag(printedMelt, delivered), "1.134");
    expectPrinted(100 * firstOrderSag(printedMelt, delivered), "1.118");
  });

  test("has the computed value for a parison delivered in 1.8 s and held for 0.7 s", () => {
    expectPrinted(100 * deliveredSag(printedMelt, waiting), "2.492");
    expectPrinted(100 * firstOrderSag(printedMelt, waiting), "2.423");
  });

  test("is a half or a sixth of the bound by the stress at the top", () => {
    // The bound: lecture notes of a university polymer course [R].
    const atTop = sagConstant(melt) * 0.3 * 1.8;
    expect(atTop / firstOrderSag(melt, hung)).toBeCloseTo(2, 12);
    expect(atTop / firstOrderSag(melt, delivered)).toBeCloseTo(6, 12);
  });

  test("is infinite when a slice breaks", () => {
    const breakTime = 1 / sagConstant(melt) / 0.3;
    expect(hungSag(melt, 0.3, breakTime)).toBe(Infinity);
    expect(hungSag(melt, 0.3, breakTime * 0.999)).toBeLessThan(10);
    for (const delivery of [4, 5, 7.3]) {
      expect(deliveredSag(melt, { length: 0.3, delivery: delivery * breakTime, hold: 0 })).toBe(Infinity);
    }
    expect(deliveredSag(melt, { length: 0.3, delivery: 3.99 * breakTime, hold: 0 })).toBeLessThan(100);
  });

  test("close to the break equals the closed integral of 1/(1 − 4q s(1 − s))", () => {
    // By hand [C]: ∫₀¹ ds/(1 − 4q s(1 − s)) = arctan(√(q/(1 − q)))/√(q (1 − q))
    const breakTime = 1 / sagConstant(melt) / 0.3;
    for (const q of [0.5, 0.99, 0.999999]) {
      const closed = Math.atan(Math.sqrt(q / (1 - q))) / Math.sqrt(q * (1 - q));
      const sag = deliveredSag(melt, { length: 0.3, delivery: 4 * q * breakTime, hold: 0 });
      expect((sag + 1) / closed).toBeCloseTo(1, 8);
    }
    // With a hold the weakest slice is not in the middle: it breaks at K L (t_d + t_h)²/(4 t_d) = 1.
    const hold = 0.6 * breakTime;
    const delivery = breakTime * (2 - 0.6 + Math.sqrt((2 - 0.6) * (2 - 0.6) - 0.36));
    expect(deliveredSag(melt, { length: 0.3, delivery: delivery * (1 + 1e-9), hold })).toBe(Infinity);
    expect(deliveredSag(melt, { length: 0.3, delivery: delivery * (1 - 1e-9), hold })).toBeGreaterThan(1e4);
  });

  test("agrees with an explicit integration of a thousand slices", () => {
    // Independent computation [C]: explicit steps of d(length)/dt = length · (weight below)/(3 η A) for each slice.
    const slices = 1000;
    const [steps, pull] = [2000, (760 * 9.80665 * 0.3) / (3 * 20_000 * slices)];
    const dt = 2.5 / steps;
    let total = 0;
    for (let slice = 0; slice < slices; slice += 1) {
      const left = (1.8 * (slice + 0.5)) / slices;
      let length = 1;
      for (let step = 0; step < steps; step += 1) {
        const time = (step + 0.5) * dt;
        if (time > left) length += dt * length * length * (slice + 0.5) * pull;
      }
      total += length / slices;
    }
    expect(total - 1).toBeCloseTo(deliveredSag(melt, waiting), 4);
  });
});

describe("the shear rate at the die", () => {
  test("has the computed value for 60 g in 1.8 s through 30/27 mm", () => {
    // Thin slit: Michaeli, Extrusion Dies for Plastics and Rubber, 3rd ed., 2003, section 3.1 [M]; values [C].
    const flow = parisonFlow(0.06, 760, 1.8);
    expectPrinted(flow, "4.386e-5");
    const rate = annularShearRate(flow, die);
    expectPrinted(rate, "1306");
    expectPrinted(powerLawShearRate(rate, 0.5), "1742");
    expect(powerLawShearRate(rate, 1)).toBe(rate);
  });

  test("is a quarter higher with the melt density than with the solid density", () => {
    expect(parisonFlow(0.06, 760, 1.8) / parisonFlow(0.06, 950, 1.8)).toBeCloseTo(1.25, 12);
  });

  test("gives a stress of viscosity times rate for a Newtonian melt", () => {
    // By hand [C]: 1000 Pa s at 300 1/s.
    expect(wallShearStress(1000, 1, 300)).toBeCloseTo(300_000, 6);
    // With a power-law index of 0.5, 4 times the rate gives twice the stress.
    expect(wallShearStress(1000, 0.5, 400)).toBeCloseTo(2 * wallShearStress(1000, 0.5, 100), 6);
  });
});

describe("the viscosity of a hotter melt", () => {
  // Rao and Schumacher, Design Formulas for Plastics Engineers, 2nd ed., 2004, section 1.3 [R]: LDPE with n = 0.3286,
  // β = 0.00863 1/°C and K = 135,990 has 373.1 Pa s at 200 °C and 500 1/s.
  const published = (temperature: number) => 135_990 * Math.exp(-0.00863 * temperature) * 500 ** (0.3286 - 1);
  const ldpe = materials.get("LDPE")!;

  test("of LDPE in the die falls as a published power law does", () => {
    expectPrinted(published(200), "373.1");
    const own = ownMaterial(ldpe, { powerLawIndex: 0.3286 });
    const viscosity = (temperature: number) => materialAt(own, temperature).dieViscosity.value;
    for (const temperature of [180, 190, 200, 210]) {
      const change = Math.log(viscosity(temperature) / viscosity(195)) / (temperature - 195);
      expect(Math.abs(change / -0.00863 - 1)).toBeLessThan(0.05);
    }
  });

  test("of linear polyethylene has an activation energy up to the limit of ethylene-butene copolymers", () => {
    // Wood-Adams and Costeux, Macromolecules 34 (2001) 6281 [R, abstract]: 33-34 kJ/mol. Linear homopolymer about 27 kJ/mol [M].
    const { value, low, high } = materials.get("HDPE")!.activationEnergy;
    expect(high).toBe(34e3);
    expect(low).toBeLessThan(27e3);
    expect(Math.abs(value / 27e3 - 1)).toBeLessThan(0.05);
  });

  test("is what Arrhenius gives, by hand", () => {
    // exp(28,000/8.314 · (1/483.15 − 1/463.15)) [C]; with n = 0.5 its root.
    expectPrinted(viscosityShift(28_000, 190, 210), "0.7401");
    expect(viscosityShift(28_000, 190, 190)).toBe(1);
    const own = ownMaterial(materials.get("HDPE")!, { powerLawIndex: 0.5 });
    const { dieViscosity } = materialAt(own, 210);
    expect(dieViscosity.value / own.dieViscosity.value).toBeCloseTo(Math.sqrt(0.7401), 4);
  });
});

test("the parison length conserves the mass of the shot", () => {
  // By hand [C]: mass = density · ring · length, π · 28.5 · 1.4142 · 3.0 mm · L at 760 kg/m³.
  const length = parisonLength({ mass: 0.06, meltDensity: 760, die, thicknessSwell: 2 });
  expect(760 * Math.PI * 0.0285 * Math.SQRT2 * 0.003 * length).toBeCloseTo(0.06, 12);
});

describe("the drop time", () => {
  const grade = fc.record({
    meltDensity: fc.double({ min: 700, max: 1300, noNaN: true }),
    zeroShearViscosity: fc.double({ min: 2e4, max: 1e6, noNaN: true }),
  });
  const hanging = fc.record({
    length: fc.double({ min: 0.1, max: 1, noNaN: true }),
    delivery: fc.double({ min: 0.3, max: 3, noNaN: true }),
    hold: fc.double({ min: 0, max: 2, noNaN: true }),
  });

  test("gives less sag and more shear when it is shorter", () => {
    fc.assert(
      fc.property(grade, hanging, (some, way) => {
        const faster = { ...way, delivery: way.delivery * 0.8 };
        expect(deliveredSag(some, faster)).toBeLessThan(deliveredSag(some, way));
        const shear = (drop: number) => annularShearRate(parisonFlow(0.06, some.meltDensity, drop), die);
        expect(shear(faster.delivery)).toBeGreaterThan(shear(way.delivery));
      }),
    );
  });

  test("gives less sag than hanging for the same time, and a longer hold gives more", () => {
    fc.assert(
      fc.property(grade, hanging, (some, way) => {
        const sag = deliveredSag(some, way);
        expect(deliveredSag(some, { ...way, hold: way.hold + 0.2 })).toBeGreaterThan(sag);
        expect(sag).toBeLessThan(hungSag(some, way.length, way.delivery + way.hold));
        expect(sag).toBeGreaterThanOrEqual(firstOrderSag(some, way) * (1 - 1e-9));
      }),
    );
  });

  test("has its upper limit at the allowed sag", () => {
    fc.assert(
      fc.property(grade, hanging, (some, way) => {
        const limit = deliveredSag(some, way);
        fc.pre(limit < 0.5);
        expect(longestDrop(some, way, limit)).toBeCloseTo(way.delivery, 5);
      }),
    );
  });

  test("has its lower limit at the fracture stress", () => {
    const grade4 = { dieViscosity: 2500, powerLawIndex: 0.45, fractureStress: 0.2e6 };
    const time = shortestDrop({ ...grade4, mass: 0.06, meltDensity: 760, die });
    const rate = powerLawShearRate(annularShearRate(parisonFlow(0.06, 760, time), die), 0.45);
    expect(wallShearStress(2500, 0.45, rate)).toBeCloseTo(0.2e6, 3);
  });

  test("has an upper limit of 0 when the hold alone exceeds the sag, and of 600 s when the melt does not sag", () => {
    expect(longestDrop(melt, { length: 0.3, hold: 3 }, 0.01)).toBe(0);
    expect(longestDrop({ ...melt, zeroShearViscosity: 1e9 }, { length: 0.3, hold: 0 }, 0.01)).toBe(600);
  });
});
