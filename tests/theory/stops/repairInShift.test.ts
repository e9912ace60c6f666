// Who repairs a stop, and when: in or out of shift, on a break, on call; every cell of the table against seconds worked out by hand.
import { describe, expect, it } from "vitest";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import { readScenario } from "#scenario/resolving/readScenario.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { changesOf } from "../../support/calendarStop.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";

/*
 * Seconds: on shift 0 to 300 and from 600 on; the people's break 60 to 180. Source: the contract (repair with or without an
 * operator, in or out of shift; breaks call people away alone), worked out by hand.
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
  `{ name: ${name}, resource: ${resource}, clock: calendar, between: ${at} s, step: finish, ${repair} }`;

/** Seconds of the first stop of each kind: it begins, its repair begins, it ends. */
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
    // 50 s on this shift, the other 30 s on the next one.
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
    // The stop ends with the shift, and so does the time of its repair.
    ["80 s before the shift ends", 220, "itself", "in", 220, 300],
  ])("%s, at %d s, by %s, shift: %s", (_, at, by, shift, begins, ends) => {
    const cell = cellOf([stop("jam", "valve", at, `repair: 80 s, by: ${by}, shift: ${shift}`)]);
    expect(firstStops(cell)["jam"]).toEqual([at, begins, ends]);
  });

  it.each<[By, number]>([
    ["operator", 680],
    ["itself", 480],
  ])("off shift, by %s and nothing said of the shift: as ever it ends at %d s", (by, ends) => {
    const cell = cellOf([stop("jam", "valve", 400, `repair: 80 s, by: ${by}`)]);
    expect(firstStops(cell)["jam"]?.at(-1)).toBe(ends);
  });

  it("by itself is not held up by a break, though the cell pauses with its people", () => {
    const pausing = calendar.replace("shifts:", "breaks: stop\n  shifts:");
    const text = `${pausing}stops: [${stop("jam", "valve", 100, "repair: 80 s, shift: in")}]\ncrew: { operators: 1 }`;
    const cell = scenarioOf(cellText(1, text), "run.length=900 s", "run.warmup=0 s");
    expect(firstStops(cell)["jam"]).toEqual([100, 100, 180]);
  });

  it("stands still over two nights, and needs no operator at all", () => {
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

  it("is the one of the crew who went last: off shift, repairing, off shift, free again", () => {
    const cell = cellOf([stop("jam", "valve", 400, onCall)]);
    const changes = changesOf(cell, "operator 1", 700).filter((each) => Number.parseFloat(each) > 200);
    expect(changes).toEqual(["300 off shift", "400 repairing", "480 off shift", "600 free"]);
  });

  it("ends what he has begun when the shift comes, and is back only then", () => {
    const cell = cellOf([stop("jam", "valve", 560, onCall)]);
    const changes = changesOf(cell, "operator 1", 700).filter((each) => Number.parseFloat(each) > 200);
    expect(changes).toEqual(["300 off shift", "560 repairing", "640 free"]);
  });

  it("does one repair after the other, in the order of the calls", () => {
    const cell = cellOf([stop("late", "station 1", 420, onCall), stop("early", "valve", 400, onCall)]);
    expect(firstStops(cell)).toEqual({ early: [400, 400, 480], late: [420, 480, 560] });
  });

  it("leaves to the next shift what is not for him", () => {
    const cell = cellOf([
      stop("jam", "valve", 400, onCall),
      stop("wear", "station 1", 410, "repair: 80 s, by: operator"),
    ]);
    expect(firstStops(cell)).toEqual({ jam: [400, 400, 480], wear: [410, 600, 680] });
  });

  it.each(["crew: { operators: 1 }", "crew: { operators: 1, priorities: [clearing, removal] }"])(
    "goes home only when a hand has been found for what was called for on shift: %s",
    (crew) => {
      // The crew repairs one from 250 to 330; the other calls at 290, before the shift is over.
      const cell = cellOf([stop("first", "valve", 250, onCall), stop("second", "station 1", 290, onCall)], crew);
      expect(firstStops(cell)).toEqual({ first: [250, 250, 330], second: [290, 330, 410] });
    },
  );

  it("takes along into the shift what was called for before it, though two others come", () => {
    const crew = "crew: { operators: 3 }";
    const cell = cellOf([stop("first", "valve", 560, onCall), stop("second", "station 1", 590, onCall)], crew);
    expect(firstStops(cell)).toEqual({ first: [560, 560, 640], second: [590, 640, 720] });
  });

  it("hears no call while the crew is there, though he was called before, and the crew none while he is on call", () => {
    const cell = cellOf([stop("jam", "valve", 15, "repair: 10 s, by: operator, shift: any")]);
    const { stops } = runCell(planCell(cell), { replication: 1 });
    const waits = stops.map(({ fromTick, repairTick }) => [fromTick / 1e6, (repairTick! - fromTick) / 1e6] as const);
    // Every 25 s from 15 s on; the stop at 65 s waits for the end of the break, and nobody waits on any shift or off it.
    expect(waits.filter(([, wait]) => wait > 0)).toEqual([[65, 115]]);
    expect(waits.length).toBeGreaterThan(28);
  });

  it("walks on shift like everybody, and has his way counted in the repair when he comes from home", () => {
    const crew = "crew: { operators: 1, walk: 10 s }";
    const night = cellOf([stop("jam", "valve", 400, onCall)], crew);
    expect(firstStops(night)["jam"]).toEqual([400, 400, 480]);
    const day = cellOf([stop("jam", "valve", 250, onCall)], crew);
    expect(firstStops(day)["jam"]).toEqual([250, 260, 340]);
  });

  it("has the same luck as the crew: the n-th repair takes the n-th time", () => {
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
  ])("the key changes nothing, and says so: by %s, shift: %s", (by, shift) => {
    const repair = stop("jam", "valve", 400, `repair: 80 s, by: ${by}, shift: ${shift}`);
    const { scenario, issues } = readScenario(text(repair), { name: "test", file: "test.yaml" });
    expect(issues.map(({ code, severity, path }) => [code, severity, path])).toEqual([
      ["shift-unused", "hint", "stops[0].shift"],
    ]);
    expect(firstStops({ ...scenario!, run: { ...scenario!.run, warmup: 0 } })["jam"]).toEqual([400, 400, 480]);
  });
});

it("says what is assumed of a repair that says nothing, each with its reason", () => {
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

it("keeps the time of every resource whole, and shows no resource that nobody has named", () => {
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
