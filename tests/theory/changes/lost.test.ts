// Lost parts: they add up for every cell, and with fixed times they are what the plan says.
import { readdirSync } from "node:fs";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { firstCases, oneIn } from "../../support/caseCount.ts";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { resultsOf } from "../../support/changedCell.ts";
import { shippedText } from "../../support/reported.ts";

const shipped = readdirSync(new URL("../../../scenarios", import.meta.url))
  .filter((name) => name.endsWith(".yaml"))
  .map((name) => name.replace(".yaml", ""));

/** Those with stops, a takeaway and a calendar come first. */
const hard = ["stops-and-repairs", "two-shifts-one-color", "slow-trimmer"];
const shippedFirst = [...hard, ...shipped.filter((name) => !hard.includes(name))];

const disturbances = ["stops", "calendar", "startUp", "changes"] as const;

/** Rows against ideal − made, both from the study itself; the cell has identical cavities. */
function expectSum({ lost, study }: ReturnType<typeof resultsOf>): void {
  const { scenario } = study;
  const rejects = study.measures.find(({ resource, measure }) => resource === "cell" && measure === "reject share");
  const isDisturbed = disturbances.some((key) => scenario[key] !== undefined) || (rejects?.interval.mean ?? 0) > 0;
  // Where nothing stops, rests or is rejected, there is nothing to account for.
  expect(lost !== null).toBe(isDisturbed);
  if (lost === null) return;
  const hours = scenario.calendar === undefined ? 1 : scenario.run.length / 3600;
  const good = study.measures.find(({ resource, measure }) => resource === "cell" && measure === "good parts per hour");
  const made = good!.interval.mean * hours;
  const planned = scenario.calendar === undefined ? 3600 : lost.plannedSeconds;
  const ideal = (planned / idealCycle(scenario).secondsPerShot) * scenario.stations[0]!.cavities;
  const sum = lost.rows.reduce((total, { parts }) => total + parts, 0);
  expect(Math.abs(sum - (ideal - made))).toBeLessThanOrEqual(1e-9 * ideal);
  if (ideal === made) return;
  expect(lost.rows.reduce((total, { share }) => total + share!, 0)).toBeCloseTo(1, 6);
}

/** Many cells on a busy machine. */
const longest = 300_000;
const brief = ["run.replications=4", "run.warmup=5 min"];

describe("lost parts", () => {
  it.each(firstCases(shippedFirst, 1))(
    "add up to the ideal cycle in the planned time less the good parts: %s",
    (name) => {
      const isWeek = shippedText(name).includes("\ncalendar:");
      const results = resultsOf(shippedText(name), isWeek ? ["run.replications=4"] : [...brief, "run.length=1 h"]);
      expectSum(results);
      const hasCauses = hard.includes(name);
      if (hasCauses) expect(results.lost!.rows.length).toBeGreaterThan(1);
      // Five days of two work shifts of eight hours.
      if (isWeek) expect(results.lost!.plannedSeconds).toBe(5 * 16 * 3600);
    },
  );

  it(
    "add up for random cells with stops, rejects, breaks, cold starts and a takeaway",
    () => {
      fc.assert(
        fc.property(randomCell, (text) => {
          const results = resultsOf(text, [], "few", (setting) => setting.endsWith("=null"));
          expect(results.lost).not.toBeNull();
          expectSum(results);
        }),
        { numRuns: oneIn(2) },
      );
    },
    longest,
  );

  it("are the time of the heating and of the breaks over the period, where times are fixed", () => {
    // Mold 13.05 s: shift, drop, close, blow, cool, vent, open, remove. Two cavities. Three shifts of eight hours [C].
    const perSecond = 2 / 13.05;
    const { lost } = resultsOf(`${cell({ stations: 1 })}
calendar:
  from: 2026-03-23
  breaks: stop
  shifts: [{ start: 06:00, end: 14:00, breaks: [{ at: 09:30, time: 30 min }] }]
startUp: { afterOff: 6 h, heatUp: 45 min, scrap: 3 cycles }
run: { length: 3 d, replications: 4, seed: fixed }`);
    const of = (wanted: string): number => lost!.rows.find(({ cause }) => cause === wanted)!.parts;
    expect(lost!.ideal).toBeCloseTo(3 * 8 * 3600 * perSecond, 6);
    // Each start and each end of production has a part of a cycle or not.
    const cycles = (count: number): number => 2 * count;
    expect(Math.abs(of("cold starts") - 3 * 45 * 60 * perSecond)).toBeLessThanOrEqual(cycles(3));
    expect(Math.abs(of("breaks") - 3 * 30 * 60 * perSecond)).toBeLessThanOrEqual(cycles(6));
    expect(of("rejects: restart")).toBe(cycles(3 * 3));
  });

  it("of one stop after a fixed time are its time over the period", () => {
    // The valve stops after each 600 s of work and stands for 120 s, then the cell goes on [C].
    const stop =
      "stops=[{ name: jam, resource: plasticator, clock: calendar, between: 600 s, repair: 120 s, step: finish }]";
    const { lost } = resultsOf(
      `${cell({ stations: 1 })}
run: { length: 10 h, replications: 4, seed: fixed, warmup: 0 s }`,
      [stop],
    );
    const jam = lost!.rows.find(({ cause }) => cause === "jam")!;
    const share = 120 / 720;
    expect(jam.halfWidth).toBe(0);
    // A mold goes on during the stop of the screw, so that a stop costs at most its time and at least its time less a cycle.
    const perHour = (3600 * 2) / 13.05;
    expect(jam.parts).toBeLessThanOrEqual(perHour * share + 1);
    expect(jam.parts).toBeGreaterThanOrEqual(perHour * share * (1 - 13.05 / 120) - 1);
    expect(lost!.rows.map(({ kind }) => kind)).toEqual(["stop", "variation"]);
  });

  it("are not listed for a cell with varying times alone", () => {
    expect(resultsOf(shippedText("two-station"), [...brief, "run.length=1 h"]).lost).toBeNull();
  });
});

interface Parts {
  readonly stations: number;
  readonly cavities?: number;
  readonly cool?: string;
}

function cell({ stations, cavities = 2, cool = "8 s" }: Parts): string {
  return `format: 1
product: { partMass: 42 g, flash: 30 % of part }
delivery: { kind: reciprocating-screw, recharge: 4 s, drop: 1.8 s }
valve: { shift: 0.25 s }
stations:
  count: ${stations}
  cavities: ${cavities}
  steps: { close: 0.6 s, blow: 0.5 s, cool: ${cool}, vent: 0.5 s, open: 0.6 s, remove: { time: 0.8 s }, clear: { time: 20 s } }`;
}

const calendar = `calendar:
  from: 2026-03-23
  breaks: stop
  shifts: [{ start: 00:05, end: 00:30, breaks: [{ at: 00:15, time: 4 min }] }]
startUp: { afterOff: 1 min, heatUp: 2 min, scrap: 2 cycles }`;

const randomCell = fc
  .record({
    stations: fc.integer({ min: 1, max: 3 }),
    cavities: fc.integer({ min: 1, max: 3 }),
    cool: fc.constantFrom("8 s", "{ uniform: [6 s, 11 s] }", "{ gamma: [9 s, 3 s] }"),
    stops: fc.subarray([
      "{ name: jam, resource: every station, between: { exponential: 4 min }, repair: { gamma: [40 s, 20 s] }, step: scrap }",
      "{ name: heater, resource: plasticator, between: { exponential: 8 min }, repair: 60 s, step: finish }",
      "{ name: wipe, resource: valve, cycles: 20, repair: 15 s, step: finish }",
    ]),
    quality: fc.constantFrom("", "quality: { rejects: 3 % }"),
    takeaway: fc.constantFrom(
      "",
      "takeaway: { belt: { time: 9 s, places: 8 }, test: { time: 2 s, buffer: 4, rejects: 4 % } }",
    ),
    hasCalendar: fc.boolean(),
    seed: fc.integer({ min: 1, max: 99 }),
  })
  .filter(({ stops, quality, takeaway, hasCalendar }) => stops.length > 0 || quality + takeaway !== "" || hasCalendar)
  .map(({ stops, quality, takeaway, hasCalendar, seed, ...parts }) =>
    [
      cell(parts),
      ...(stops.length > 0 ? ["stops:", ...stops.map((stop) => `  - ${stop}`)] : []),
      quality,
      takeaway,
      ...(hasCalendar ? [calendar] : []),
      `run: { length: 30 min, replications: 2, seed: ${seed}${hasCalendar ? "" : ", warmup: 2 min"} }`,
    ].join("\n"),
  );
