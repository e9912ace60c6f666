// Holds the finite differences to the series solution of a wall, to a textbook example and to the heat balance.

import { describe, expect, test } from "vitest";
import { wallByDifferences, type WallByDifferences } from "../../support/wallByDifferences.ts";

const insulated = { temperature: 0, transfer: 0 };

/** A wall of unit thickness and diffusivity from 1 to 0, so that time is the Fourier number. */
const unitWall: WallByDifferences = {
  wall: 1,
  diffusivity: 1,
  conductivity: 1,
  start: 1,
  inside: insulated,
  outside: { temperature: 0, transfer: Infinity },
};

test.each([
  // Series of Carslaw and Jaeger, Conduction of Heat in Solids, 2nd ed., 1959, sections 3.3-3.4 [M]; values computed from it [C].
  [0.05, 0.99687, 0.74769],
  [0.1, 0.94931, 0.64318],
  [0.2, 0.77231, 0.49591],
  [0.5, 0.37078, 0.23605],
  [1.0, 0.10798, 0.06874],
])("at Fourier number %d the insulated face is at %d and the mean at %d", (time, face, mean) => {
  const wall = wallByDifferences(unitWall, time);
  expect(wall.insideFace).toBeCloseTo(face, 4);
  expect(wall.mean).toBeCloseTo(mean, 4);
});

test("the pipe wall of Incropera's example 5.4 has face temperatures of 42.9 and 45.3 °C", () => {
  // Incropera et al., Fundamentals of Heat and Mass Transfer, example 5.4: 42.9 [R, in a collection of its examples], 45.3 [C].
  const pipe: WallByDifferences = {
    wall: 0.04,
    diffusivity: 18.8e-6,
    conductivity: 63.9,
    start: -20,
    inside: insulated,
    outside: { temperature: 60, transfer: 500 },
  };
  const wall = wallByDifferences(pipe, 480);
  expect(Math.abs(wall.insideFace - 42.9)).toBeLessThan(0.2);
  expect(Math.abs(wall.moldFace - 45.3)).toBeLessThan(0.2);
});

describe("heat", () => {
  test("leaves a wall equally through two equal faces", () => {
    const both = { temperature: 0, transfer: 3 };
    const wall = wallByDifferences({ ...unitWall, inside: both, outside: both }, 0.3);
    expect(wall.insideFace).toBeCloseTo(wall.moldFace, 10);
  });

  test("reaches the linear profile of two films and a wall in series", () => {
    // Thermal resistances 1/2, 1 and 1/4 in series between 40 and 10, calculated by hand [C].
    const wall = wallByDifferences(
      { ...unitWall, inside: { temperature: 40, transfer: 2 }, outside: { temperature: 10, transfer: 4 } },
      60,
    );
    const flux = 30 / (1 / 2 + 1 + 1 / 4);
    expect(wall.insideFace).toBeCloseTo(40 - flux / 2, 6);
    expect(wall.moldFace).toBeCloseTo(10 + flux / 4, 6);
  });

  test("stays in a wall with insulated faces", () => {
    expect(wallByDifferences({ ...unitWall, outside: insulated }, 5).mean).toBeCloseTo(1, 9);
  });
});
