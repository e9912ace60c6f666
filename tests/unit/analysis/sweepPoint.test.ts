// A point of a sweep: the ideal parts an hour beside those of its runs, and what keeps a point from a result.
import { expect, it } from "vitest";
import { studyPoint } from "#analysis/study/sweepPoint.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";

const foundOf = (stations: number, ...set: readonly string[]) => {
  const point = studyPoint(scenarioOf(cellText(stations), ...set));
  if (point.kind !== "found") throw new Error(JSON.stringify(point.issues));
  const parts = point.measures.find(({ resource, measure }) => resource === "cell" && measure === "parts per hour");
  return { ...point, made: parts!.mean };
};

it("has the ideal parts an hour that runs at fixed times make", () => {
  // As a timed event graph, computed independently of this project [C]: 6.525 s a shot of two parts.
  const { ideal, made, replications } = foundOf(2);
  expect(ideal.secondsPerShot).toBeCloseTo(6.525, 9);
  expect(ideal.partsPerHour).toBeCloseTo((2 * 3600) / 6.525, 6);
  expect(Math.abs(made / ideal.partsPerHour! - 1)).toBeLessThan(0.003);
  expect(replications).toBe(3);
});

it("has them for stations of different cavities, and none where hours off shift count", () => {
  const station = (name: string, cavities: number): string =>
    `{ name: ${name}, cavities: ${cavities}, steps: { close: 0.6 s, blow: 0.5 s, cool: 8 s, vent: 0.5 s, open: 0.6 s, remove: { time: 0.8 s } } }`;
  const { ideal, made } = foundOf(2, `stations=[${station("a", 2)}, ${station("b", 1)}]`);
  expect(ideal.partsPerHour).toBeCloseTo((1.5 * 3600) / ideal.secondsPerShot, 6);
  expect(Math.abs(made / ideal.partsPerHour! - 1)).toBeLessThan(0.003);
  const shift = `calendar={ from: 2026-03-23, shifts: [{ start: "00:00", end: "14:00" }] }`;
  expect(foundOf(2, shift).ideal.partsPerHour).toBeNull();
});
