// Holds the cooling of a wall to series, to independent finite differences and volumes, and to its own symmetries.
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { coolableWall } from "#physics/cooling/coolableWall.ts";
import { coolingTime } from "#physics/cooling/coolingTime.ts";
import { slabRoot } from "#physics/cooling/slabRoot.ts";
import type { WallCooling, WallPlace } from "#physics/cooling/wallCooling.ts";
import { wallTemperature } from "#physics/cooling/wallTemperature.ts";
import { isLong } from "../../support/caseCount.ts";
import { hottestByVolumes } from "../../support/wallByVolumes.ts";
import { wallByDifferences } from "../../support/wallByDifferences.ts";
import { expectPrinted } from "./printed.ts";

/** Unit thickness and diffusivity, from 1 to 0 in perfect contact, so that time is the Fourier number. */
const unitWall: WallCooling = {
  wall: 1,
  diffusivity: 1,
  conductivity: 1,
  meltTemperature: 1,
  moldTemperature: 0,
  moldContact: Infinity,
};
const thin = {
  ...unitWall,
  wall: 0.001,
  diffusivity: 1.2e-7,
  conductivity: 0.25,
  meltTemperature: 200,
  moldTemperature: 10,
};
const thicker = { ...thin, wall: 0.0015, moldTemperature: 15 };

describe("a wall in perfect contact, insulated inside", () => {
  // Series of Carslaw and Jaeger, Conduction of Heat in Solids, 2nd ed., 1959, sections 3.3-3.4 [M]; values computed from it [C].
  test.each([
    [0.05, "0.99687", "0.74769"],
    [0.1, "0.94931", "0.64318"],
    [0.2, "0.77231", "0.49591"],
    [0.5, "0.37078", "0.23605"],
    [1.0, "0.10798", "0.06874"],
  ])("at Fourier number %d has the inside face at %s and the mean at %s", (fourier, face, mean) => {
    expectPrinted(wallTemperature(unitWall, "inside face", fourier), face);
    expectPrinted(wallTemperature(unitWall, "mean", fourier), mean);
    expect(wallTemperature(unitWall, "mold face", fourier)).toBeCloseTo(0, 12);
  });

  test("loses heat with the square root of time at small Fourier numbers", () => {
    // Half space: 1 − mean = 2 √(Fo/π); Carslaw and Jaeger, Conduction of Heat in Solids, 2nd ed., 1959, section 2.4 [M+C].
    for (const fourier of [0.01, 0.001, 0.0001]) {
      const lost = 1 - wallTemperature(unitWall, "mean", fourier);
      expect(lost).toBeCloseTo(2 * Math.sqrt(fourier / Math.PI), 9);
      expect(wallTemperature(unitWall, "inside face", fourier)).toBeCloseTo(1, 9);
    }
  });

  test("needs more than one term at small Fourier numbers: one term exceeds the melt temperature at 0.02", () => {
    // Incropera et al., Fundamentals of Heat and Mass Transfer, ch. 5 [M]: the one-term form holds for Fo > 0.2, within 2 %.
    const oneTerm = (fourier: number) => (4 / Math.PI) * Math.exp((-Math.PI * Math.PI * fourier) / 4);
    expect(oneTerm(0.02)).toBeGreaterThan(1);
    expect(wallTemperature(unitWall, "inside face", 0.02)).toBeLessThanOrEqual(1);
    for (const fourier of [0.2, 0.3, 0.5, 1]) {
      const series = wallTemperature(unitWall, "inside face", fourier);
      expect(Math.abs(oneTerm(fourier) / series - 1)).toBeLessThan(0.02);
    }
  });
});

test("the first root with two equal faces is that of half the wall", () => {
  // By symmetry a wall with Bi 2 on both faces is two half walls with Bi 1; root of Incropera and DeWitt, table 5.1 [M+C].
  expectPrinted(slabRoot(0, { inside: 2, outside: 2 }) / 2, "0.8603");
});

describe("the cooling time", () => {
  test("in perfect contact has the values of the one-term formula", () => {
    // Ballman and Shusman, Modern Plastics 37 (1959) 126 [M]; the form is also read in a trade article [R]; values [C].
    expectPrinted(coolingTime(thin, "inside face", 60), "5.325");
    // The second term still contributes to the mean at Fo 0.46: one term gives 3.799.
    expect(coolingTime(thin, "mean", 60)).toBeCloseTo(3.7995, 3);
    expectPrinted(coolingTime(thicker, "inside face", 70), "11.054");
    expect(coolingTime(thicker, "mean", 70)).toBeCloseTo(7.622, 2);
  });

  test("with a finite mold contact has the computed values", () => {
    // Root of ζ tan ζ = Bi and of the series, computed independently of this project [C].
    expectPrinted(coolingTime({ ...thin, moldContact: 1000 }, "inside face", 60), "8.030");
    expectPrinted(coolingTime({ ...thin, moldContact: 500 }, "inside face", 60), "10.773");
  });

  test("in perfect contact is a third shorter than with a contact of 1000 W/(m² K)", () => {
    const share = coolingTime(thin, "inside face", 60) / coolingTime({ ...thin, moldContact: 1000 }, "inside face", 60);
    expect(share).toBeGreaterThan(0.64);
    expect(share).toBeLessThan(0.69);
  });

  test("of a wall cooled from both sides is a quarter of the one-sided time", () => {
    const both = { ...thin, insideAir: { temperature: 10, transfer: Infinity } };
    // The center of a two-sided wall is the inside face of half the wall.
    const half = coolingTime({ ...thin, wall: thin.wall / 2 }, "inside face", 60);
    expect(coolingTime(thin, "inside face", 60) / half).toBeCloseTo(4, 9);
    // The mean of a two-sided wall is the mean of half the wall.
    expect(coolingTime(thin, "mean", 60) / coolingTime(both, "mean", 60)).toBeCloseTo(4, 9);
  });

  test("is 0 for a melt that is cold enough, and infinite for a mold or air that is too warm", () => {
    expect(coolingTime(thin, "mean", 200)).toBe(0);
    expect(coolingTime(thin, "mean", 10)).toBe(Infinity);
    const warmInside = { ...thin, insideAir: { temperature: 150, transfer: 1e4 } };
    expect(coolingTime(warmInside, "inside face", 60)).toBe(Infinity);
  });

  test("throws for a mold or air hotter than the melt, and for a contact without heat transfer", () => {
    expect(() => coolingTime({ ...thin, moldTemperature: 210 }, "mean", 60)).toThrow("colder than the melt");
    const hotAir = { ...thin, insideAir: { temperature: 210, transfer: 50 } };
    expect(() => coolingTime(hotAir, "mean", 60)).toThrow("colder than the melt");
    expect(() => coolingTime({ ...thin, moldContact: 0 }, "mean", 60)).toThrow("can be cooled");
    expect(() => wallTemperature(thin, "mean", -1)).toThrow("forward in time");
  });
});

describe("finite differences of the heat equation", () => {
  const cases: readonly (readonly [string, Partial<WallCooling>])[] = [
    ["in perfect contact", {}],
    ["with a mold contact of 600", { moldContact: 600 }],
    ["with still warm air inside", { moldContact: 1000, insideAir: { temperature: 60, transfer: 20 } }],
    ["with cold moving air inside", { moldContact: 800, insideAir: { temperature: -5, transfer: 150 } }],
    ["in perfect contact with air inside", { insideAir: { temperature: 30, transfer: 90 } }],
  ];
  const places = ["inside face", "mold face", "mean"] as const satisfies readonly WallPlace[];

  test.each(cases)("agree with the series %s", (_name, change) => {
    const cooling: WallCooling = { ...thin, ...change };
    for (const time of [0.2, 1, 4, 12]) {
      const differences = wallByDifferences(
        {
          wall: cooling.wall,
          diffusivity: cooling.diffusivity,
          conductivity: cooling.conductivity,
          start: cooling.meltTemperature,
          inside: cooling.insideAir ?? { temperature: 0, transfer: 0 },
          outside: { temperature: cooling.moldTemperature, transfer: cooling.moldContact },
        },
        time,
      );
      const byPlace = {
        "inside face": differences.insideFace,
        "mold face": differences.moldFace,
        mean: differences.mean,
      };
      for (const place of places) {
        const difference = wallTemperature(cooling, place, time) - byPlace[place];
        expect(Math.abs(difference), `${place} at ${time} s`).toBeLessThan(0.01);
      }
    }
  });

  test("reach the demold temperature at the cooling time", () => {
    const time = coolingTime({ ...thin, moldContact: 600 }, "inside face", 60);
    const differences = wallByDifferences(
      {
        wall: thin.wall,
        diffusivity: thin.diffusivity,
        conductivity: thin.conductivity,
        start: 200,
        inside: { temperature: 0, transfer: 0 },
        outside: { temperature: 10, transfer: 600 },
      },
      time,
    );
    expect(differences.insideFace).toBeCloseTo(60, 2);
  });
});

describe("the hottest point", () => {
  const faces = (inside: number, outside: number, air = 0): WallCooling => ({
    ...unitWall,
    moldContact: outside,
    insideAir: { transfer: inside, temperature: air },
  });

  // Finite volumes of tests/support/wallByVolumes.ts [C].
  const biots = [0, 0.3, 1, 4, 20];
  test.each(
    biots.flatMap((inside) => (isLong ? [0.5, 2, 8, 40] : [2, 40]).map((outside) => [inside, outside] as const)),
  )("with Biot numbers %d inside and %d at the mold falls as finite volumes do", (inside, outside) => {
    for (const [target, air] of [
      [0.3, 0],
      [0.6, 0.25],
    ] as const) {
      const volumes = hottestByVolumes(
        { inside: { biot: inside, temperature: air }, outside: { biot: outside, temperature: 0 } },
        target,
      );
      const series = coolingTime(faces(inside, outside, air), "hottest point", target);
      expect(Math.abs(series / volumes - 1)).toBeLessThan(1e-3);
    }
  });

  test("is the center of two equal faces, which is the insulated face of half the wall", () => {
    // Symmetry; root and constant of a face with Bi 1, Incropera and DeWitt, table 5.1 [M+C]: 0.8603, 1.1191, on half the wall.
    const time = coolingTime(faces(2, 2), "hottest point", 0.3);
    expect(time).toBeCloseTo(Math.log(1.1191 / 0.3) / 0.8603 ** 2 / 4, 3);
    expect(wallTemperature(faces(2, 2), "inside face", time)).toBeLessThan(0.3);
  });

  test("is the inside face where the inside is insulated or its air is hotter than the wall", () => {
    for (const fourier of [0.01, 0.1, 1, 3]) {
      const insulated = faces(0, 5);
      expect(wallTemperature(insulated, "hottest point", fourier)).toBeCloseTo(
        wallTemperature(insulated, "inside face", fourier),
        12,
      );
    }
    const hot = faces(3, 5, 0.8);
    expect(wallTemperature(hot, "hottest point", 5)).toBeCloseTo(wallTemperature(hot, "inside face", 5), 12);
  });

  test("takes more than twice the time of the inside face where the air cools strongly", () => {
    // Bi 20 inside, 8 at the mold: the face criterion would open the mold far too early.
    const strong = faces(20, 8);
    expect(coolingTime(strong, "hottest point", 0.3) / coolingTime(strong, "inside face", 0.3)).toBeGreaterThan(2);
  });
});

describe("the cooling time as a function", () => {
  const any = fc.record({
    wall: fc.double({ min: 3e-4, max: 8e-3, noNaN: true }),
    diffusivity: fc.double({ min: 5e-8, max: 1.5e-7, noNaN: true }),
    conductivity: fc.double({ min: 0.15, max: 0.5, noNaN: true }),
    meltTemperature: fc.double({ min: 150, max: 280, noNaN: true }),
    moldTemperature: fc.double({ min: 5, max: 40, noNaN: true }),
    moldContact: fc.oneof(fc.constant(Infinity), fc.double({ min: 100, max: 5000, noNaN: true })),
  });
  const place = fc.constantFrom<("hottest point" | "mean")[]>("hottest point", "mean");
  const demold = fc.double({ min: 45, max: 120, noNaN: true });
  const more = fc.double({ min: 1.02, max: 2, noNaN: true });

  test("rises faster than linearly with the wall, and at most with its square", () => {
    fc.assert(
      fc.property(any, place, demold, more, (cooling, where, target, factor) => {
        const time = coolingTime(cooling, where, target);
        const thick = coolingTime({ ...cooling, wall: cooling.wall * factor }, where, target);
        expect(thick).toBeGreaterThan(time * factor * (1 - 1e-9));
        expect(thick).toBeLessThan(time * factor * factor * (1 + 1e-6));
      }),
    );
  });

  test("falls with a colder mold, a better contact and a warmer demold temperature", () => {
    fc.assert(
      fc.property(any, place, demold, (cooling, where, target) => {
        const time = coolingTime(cooling, where, target);
        expect(coolingTime({ ...cooling, moldTemperature: cooling.moldTemperature - 4 }, where, target)).toBeLessThan(
          time,
        );
        expect(coolingTime(cooling, where, target + 5)).toBeLessThan(time);
        expect(coolingTime({ ...cooling, moldContact: cooling.moldContact * 1.3 }, where, target)).toBeLessThanOrEqual(
          time,
        );
      }),
    );
  });

  test("is shorter for the mean than for the inside face", () => {
    fc.assert(
      fc.property(any, demold, (cooling, target) => {
        expect(coolingTime(cooling, "mean", target)).toBeLessThan(coolingTime(cooling, "inside face", target));
      }),
    );
  });

  test("falls with cold inside air", () => {
    fc.assert(
      fc.property(any, place, demold, (cooling, where, target) => {
        const withAir = { ...cooling, insideAir: { temperature: 15, transfer: 80 } };
        expect(coolingTime(withAir, where, target)).toBeLessThan(coolingTime(cooling, where, target));
      }),
    );
  });

  test("is inverted by the coolable wall and by the wall temperature", () => {
    fc.assert(
      fc.property(any, place, demold, (cooling, where, target) => {
        const time = coolingTime(cooling, where, target);
        expect(coolableWall(cooling, where, { time, demoldTemperature: target }) / cooling.wall).toBeCloseTo(1, 6);
        expect(wallTemperature(cooling, where, time)).toBeCloseTo(target, 5);
      }),
    );
  });

  test("allows a thicker wall when it is longer, within bounds", () => {
    const wanted = (time: number) => coolableWall(thin, "inside face", { time, demoldTemperature: 60 });
    expect(wanted(4)).toBeLessThan(wanted(4.1));
    expect(wanted(1e7)).toBe(0.1);
    expect(coolableWall(thin, "mean", { time: 1e7, demoldTemperature: 5 })).toBe(0);
  });
});
