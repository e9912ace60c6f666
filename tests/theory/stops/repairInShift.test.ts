// Repairs on shift, off shift, during a break and on call, against times calculated by hand.
import { describe, expect, it } from "vitest";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import { readScenario } from "#scenario/resolving/readScenario.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { changesOf } from "../../support/calendarStop.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";

/*
 * Seconds: on shift 0 to 300 and from 600 on; break of the operators 60 to 180. The expected times follow by hand from the rules
 * of the model [C]: a repair may need an operator, and is done only on shift or at any time. A break affects only operators.
 */
const calendar = `calendar:
  from: 2026-03-23
  at: "06:00"
  shifts: [{ start: "06:00", end: "06:05", breaks: [{ at: "06:01", time: 2 min }] }, { start: "06:10", end: "06:30" }]
`;

type By = "itself" | "operator";

function cellOf(stops: readonly string[], more = "crew: { operators: 1 }"): Scenario {
  const text = `${calendar}stops: [${stops.join(", ")}]\n${more}`;
  return scenarioOf(cellText(1, text), "run.length=900 s", "run.warmup=0 s");
}

const stop = (name: string, resource: string, at: number, repair: string): string =>
  `{ name: ${name}, resource: ${resource}, clock: calendar, start: fresh, between: ${at} s, step: finish, ${repair} }`;

/** Seconds at which the first stop of each name begins, its repair begins, and it ends. */
function firstStops(cell: Scenario): Readonly<Record<string, readonly (number | null)[]>> {
  const { stops } = runCell(planCell(cell), { replication: 1 });
  return Object.fromEntries(
    stops.toReversed().map(({ stop: name, fromTick, repairTick, untilTick }) => {
      return [name, [fromTick, repairTick, untilTick].map((tick) => (tick === null ? null : tick / 1e6))];
    }),
  );
}

describe("a repair of 80 s", () => {
  it.each<[string, number, By, "in" | "any", number, number]>([
    ["within the break", 100, "itself", "any", 100, 180],
    ["within the break", 100, "itself", "in", 100, 180],
    ["within the break", 100, "operator", "in", 180, 260],
    ["within the break", 100, "operator", "any", 180, 260],
    ["50 s before the shift ends", 250, "itself", "any", 250, 330],
    // 50 s on this shift, 30 s on the next one.
    ["50 s before the shift ends", 250, "itself", "in", 250, 630],
    ["50 s before the shift ends", 250, "operator", "in", 250, 330],
    ["50 s before the shift ends", 250, "operator", "any", 250, 330],
    ["off shift", 400, "itself", "any", 400, 480],
    ["off shift", 400, "itself", "in", 600, 680],
    ["off shift", 400, "operator", "in", 600, 680],
    ["off shift", 400, "operator", "any", 400, 480],
    ["40 s before the next shift", 560, "itself", "any", 560, 640],
    ["40 s before the next shift", 560, "itself", "in", 600, 680],
    ["40 s before the next shift", 560, "operator", "in", 600, 680],
    ["40 s before the next shift", 560, "operator", "any", 560, 640],
    // The repair ends with the shift.
    ["80 s before the shift ends", 220, "itself", "in", 220, 300],
  ])("of a stop %s, at %d s, by %s, shift: %s, begins and ends on time", (_, at, by, shift, begins, ends) => {
    const cell = cellOf([stop("jam", "valve", at, `repair: 80 s, by: ${by}, shift: ${shift}`)]);
    expect(firstStops(cell)["jam"]).toEqual([at, begins, ends]);
  });

  it.each<[By, number]>([
    ["operator", 680],
    ["itself", 480],
  ])("off shift, by %s and without the key `shift`, ends at %d s", (by, ends) => {
    const cell = cellOf([stop("jam", "valve", 400, `repair: 80 s, by: ${by}`)]);
    expect(firstStops(cell)["jam"]?.at(-1)).toBe(ends);
  });

  it("by itself continues during a break, even under `breaks: stop`", () => {
    const pausing = calendar.replace("shifts:", "breaks: stop\n  shifts:");
    const text = `${pausing}stops: [${stop("jam", "valve", 100, "repair: 80 s, shift: in")}]\ncrew: { operators: 1 }`;
    const cell = scenarioOf(cellText(1, text), "run.length=900 s", "run.warmup=0 s");
    expect(firstStops(cell)["jam"]).toEqual([100, 100, 180]);
  });

  it("by itself pauses off shift and needs no operator", () => {
    const shifts = `[{ start: "06:00", end: "06:02" }, { start: "06:04", end: "06:05" }, { start: "06:10", end: "06:30" }]`;
    const text = `calendar: { from: 2026-03-23, at: "06:00", shifts: ${shifts} }
stops: [${stop("jam", "valve", 100, "repair: 100 s, shift: in")}]`;
    const cell = scenarioOf(cellText(1, text), "run.length=900 s", "run.warmup=0 s");
    // 20 s until 120, 60 s from 240 to 300, the last 20 s from 600 on.
    expect(firstStops(cell)["jam"]).toEqual([100, 100, 620]);
  });
});

describe("the operator on call", () => {
  const onCall = "repair: 80 s, by: operator, shift: any";

  it("is the operator of the crew who left last: off shift, repairing, off shift, free", () => {
    const cell = cellOf([stop("jam", "valve", 400, onCall)]);
    const changes = changesOf(cell, "operator 1", 700).filter((each) => Number.parseFloat(each) > 200);
    expect(changes).toEqual(["300 off shift", "400 repairing", "480 off shift", "600 free"]);
  });

  it("finishes a repair after the shift starts, and is free only then", () => {
    const cell = cellOf([stop("jam", "valve", 560, onCall)]);
    const changes = changesOf(cell, "operator 1", 700).filter((each) => Number.parseFloat(each) > 200);
    expect(changes).toEqual(["300 off shift", "560 repairing", "640 free"]);
  });

  it("does one repair after another, in the order of the stops", () => {
    const cell = cellOf([stop("late", "station 1", 420, onCall), stop("early", "valve", 400, onCall)]);
    expect(firstStops(cell)).toEqual({ early: [400, 400, 480], late: [420, 480, 560] });
  });

  it("leaves repairs without `shift: any` to the next shift", () => {
    const cell = cellOf([
      stop("jam", "valve", 400, onCall),
      stop("wear", "station 1", 410, "repair: 80 s, by: operator"),
    ]);
    expect(firstStops(cell)).toEqual({ jam: [400, 400, 480], wear: [410, 600, 680] });
  });

  it.each(["crew: { operators: 1 }", "crew: { operators: 1, priorities: [clearing, removal] }"])(
    "stays after the shift until every stop of the shift is repaired: %s",
    (crew) => {
      // The crew repairs the first stop from 250 to 330. The second begins at 290, before the end of the shift.
      const cell = cellOf([stop("first", "valve", 250, onCall), stop("second", "station 1", 290, onCall)], crew);
      expect(firstStops(cell)).toEqual({ first: [250, 250, 330], second: [290, 330, 410] });
    },
  );

  it("does a repair requested before the shift, even when two other operators start work", () => {
    const crew = "crew: { operators: 3 }";
    const cell = cellOf([stop("first", "valve", 560, onCall), stop("second", "station 1", 590, onCall)], crew);
    expect(firstStops(cell)).toEqual({ first: [560, 560, 640], second: [590, 640, 720] });
  });

  it("repairs off shift only, and the crew on shift only", () => {
    const cell = cellOf([stop("jam", "valve", 15, "repair: 10 s, by: operator, shift: any")]);
    const { stops } = runCell(planCell(cell), { replication: 1 });
    const waits = stops.map(({ fromTick, repairTick }) => [fromTick / 1e6, (repairTick! - fromTick) / 1e6] as const);
    // A stop every 25 s from 15 s on. Only the stop at 65 s waits, for the end of the break.
    expect(waits.filter(([, wait]) => wait > 0)).toEqual([[65, 115]]);
    expect(waits.length).toBeGreaterThan(28);
  });

  it("walks to a repair on shift; off shift the repair time includes the way", () => {
    const crew = "crew: { operators: 1, walk: 10 s }";
    const night = cellOf([stop("jam", "valve", 400, onCall)], crew);
    expect(firstStops(night)["jam"]).toEqual([400, 400, 480]);
    const day = cellOf([stop("jam", "valve", 250, onCall)], crew);
    expect(firstStops(day)["jam"]).toEqual([250, 260, 340]);
  });

  it("uses the same stream as the crew: the n-th repair takes the same time", () => {
    const times = (shift: string): readonly number[] => {
      const repair = `repair: { gamma: [40 s, 10 s] }, by: operator, shift: ${shift}`;
      const text = `crew: { operators: 1 }\n${calendar}stops: [${stop("jam", "valve", 130, repair)}]`;
      const cell = scenarioOf(cellText(1, text), "run.length=3 d", "run.warmup=0 s");
      const { stops } = runCell(planCell(cell), { replication: 1 });
      return stops.flatMap(({ repairTick, untilTick }) => (untilTick === null ? [] : [untilTick - repairTick!]));
    };
    const [onShift, always] = [times("in"), times("any")];
    expect(always.length).toBeGreaterThan(onShift.length);
    expect(always.slice(0, onShift.length)).toEqual(onShift);
  });
});

describe("without a calendar", () => {
  const text = (repair: string): string => cellText(1, `crew: { operators: 1 }\nstops: [${repair}]`);

  it.each<[By, "in" | "any"]>([
    ["itself", "in"],
    ["itself", "any"],
    ["operator", "in"],
    ["operator", "any"],
  ])("the key `shift` has no effect and gives a hint: by %s, shift: %s", (by, shift) => {
    const repair = stop("jam", "valve", 400, `repair: 80 s, by: ${by}, shift: ${shift}`);
    const { scenario, issues } = readScenario(text(repair), { name: "test", file: "test.yaml" });
    expect(issues.map(({ code, severity, path }) => [code, severity, path])).toEqual([
      ["shift-unused", "hint", "stops[0].shift"],
    ]);
    expect(firstStops({ ...scenario!, run: { ...scenario!.run, warmup: 0 } })["jam"]).toEqual([400, 400, 480]);
  });
});

it("lists the assumed `shift` of every repair without the key", () => {
  const given = [
    stop("one", "valve", 400, "repair: 80 s, by: operator"),
    stop("two", "station 1", 400, "repair: 80 s"),
    stop("three", "plasticator", 400, "repair: 80 s, shift: in"),
  ];
  const text = cellText(1, `${calendar}crew: { operators: 1 }\nstops: [${given.join(", ")}]`);
  const { assumed } = readScenario(text, { name: "test", file: "test.yaml" });
  const shifts = assumed.filter(({ path }) => path.endsWith("shift"));
  expect(shifts.map(({ path, value }) => [path, value])).toEqual([
    ["stops[0].shift", "in"],
    ["stops[1].shift", "any"],
  ]);
});

it("gives every resource of the cell the observed time, and lists no internal resource", () => {
  const cell = cellOf([
    stop("one", "valve", 100, "repair: 80 s, shift: in"),
    stop("two", "station 1", 130, "repair: 50 s, by: operator, shift: any"),
  ]);
  const { stateTimes, longestActive } = runCell(planCell(cell), { replication: 1 });
  const total = new Map<string, number>();
  for (const { resource, ticks } of stateTimes) total.set(resource, (total.get(resource) ?? 0) + ticks);
  expect([...total]).toEqual(["plasticator", "valve", "station 1", "operator 1"].map((name) => [name, 900e6]));
  expect(longestActive.map(({ resource }) => resource)).toEqual([...total.keys()]);
});
