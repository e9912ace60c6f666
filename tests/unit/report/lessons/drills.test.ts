// Holds the key and the reasons of every drill to the events of its record, read here in another way.
import { describe, expect, it } from "vitest";
import { drillKinds } from "#report/drills/drillKinds.ts";
import type { Drill } from "#report/drills/drill.ts";
import { nextDrops } from "#report/drills/nextDrop.ts";
import { nextWaits } from "#report/drills/nextWait.ts";
import { shotsFull } from "#report/drills/shotFull.ts";
import type { EventRecord } from "#cell/records/eventRecord.ts";
import { runOnce } from "#report/lessons/spells.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { readDrillCell } from "./shipped.ts";

const drillsOf = (name: string): readonly Drill[] => drillKinds.find((kind) => kind.name === name)!.make(readDrillCell);
const rightOf = ({ exercise }: Drill) => exercise.choices.find(({ isRight }) => isRight)!;
const eventsOf = ({ charts }: Drill): readonly EventRecord[] => charts[0]!.run.events;

/** Rows that last, of one resource. */
const lasting = (events: readonly EventRecord[], resource: string): readonly EventRecord[] =>
  events
    .filter((row) => row.resource === resource)
    .filter((row, i, own) => own[i + 1] === undefined || own[i + 1]!.seconds > row.seconds);

describe("every drill", () => {
  const all = drillKinds.map(({ name }) => [name, drillsOf(name)] as const);

  it.each(all)("of the kind %s has one right choice and a reason for each", (_, drills) => {
    expect(drills.length).toBeGreaterThanOrEqual(4);
    for (const { exercise, charts } of drills) {
      expect(exercise.choices.filter(({ isRight }) => isRight)).toHaveLength(1);
      expect(exercise.choices.length).toBeGreaterThanOrEqual(2);
      expect(new Set(exercise.choices.map(({ text }) => text)).size).toBe(exercise.choices.length);
      expect(exercise.choices.every(({ because }) => /\w.*\.$/u.test(because))).toBe(true);
      for (const { from, at, until } of charts) {
        expect(from).toBeLessThan(at);
        expect(at).toBeLessThanOrEqual(until);
      }
    }
  });

  it.each(all)("of the kind %s does not always have the answer at the same place", (_, drills) => {
    expect(
      new Set(drills.map(({ exercise }) => exercise.choices.findIndex(({ isRight }) => isRight))).size,
    ).toBeGreaterThan(1);
  });
});

describe("the next drop", () => {
  const wins: Readonly<
    Record<string, (name: string, at: number, events: readonly EventRecord[], cell: Scenario) => number>
  > = {
    "first-ready": (name, at, events) => readySince(name, at, events),
    "longest-since-drop": (name, at, events) =>
      events.findLast((row) => row.resource === name && row.role === "mold.drop" && row.seconds < at)!.seconds,
    priority: (name, _, __, cell) => cell.stations.find((station) => station.name === name)!.priority,
  };
  /** When the station came to wait for the shot that it waits for at this time. */
  function readySince(name: string, at: number, events: readonly EventRecord[]): number {
    const before = lasting(events, name).filter(({ seconds }) => seconds < at);
    return before[before.findLastIndex(({ kind }) => kind === "working") + 1]!.seconds;
  }
  const isReady = (name: string, at: number, events: readonly EventRecord[]): boolean =>
    lasting(events, name).findLast(({ seconds }) => seconds < at)?.kind === "waiting";

  it.each(Object.keys(wins))("by %s goes to the mold that the rule names", (rule) => {
    const run = runOnce(readDrillCell("three-molds.yaml", [`valve.dispatch=${rule}`]));
    const drills = nextDrops(run);
    expect(drills.length).toBeGreaterThan(10);
    for (const drill of drills) {
      const at = drill.charts[0]!.at;
      const shift = run.events.find(
        ({ role, owner, seconds }) => role === "valve.toPort" && owner === "station" && seconds >= at,
      )!;
      expect(rightOf(drill).text).toBe(shift.station);
      const ready = run.scenario.stations
        .map(({ name }) => name)
        .filter((name) => isReady(name, shift.seconds, run.events));
      const first = ready.toSorted((one, other) => {
        const [a, b] = [one, other].map((name) => wins[rule]!(name, shift.seconds, run.events, run.scenario));
        return a! - b!;
      });
      expect(first[0]).toBe(shift.station);
      for (const { text, because } of drill.exercise.choices) {
        expect(because.includes("is not ready when the shot is full")).toBe(!ready.includes(text));
      }
    }
  });
});

describe("the next wait", () => {
  it.each([["two-molds.yaml"], ["three-molds.yaml"]])("in %s is the first one after the chart", (file) => {
    const drills = nextWaits(runOnce(readDrillCell(file)));
    expect(drills.length).toBeGreaterThan(5);
    for (const drill of drills) {
      const [{ at }, events] = [drill.charts[0]!, eventsOf(drill)];
      const waits = ["plasticator", "left", "middle", "right"]
        .flatMap((name) => lasting(events, name))
        .filter(({ kind, seconds }) => kind === "waiting" && seconds > at)
        .toSorted((one, other) => one.seconds - other.seconds);
      const [name, words] = rightOf(drill).text.split(": ");
      expect(name!.toLowerCase().replace("the screw", "plasticator")).toBe(waits[0]!.resource);
      expect(words).toBe(waits[0]!.state === "awaiting melt" ? "the shot is not full yet." : "no mold open and empty.");
      expect(rightOf(drill).because).toBe(`This wait begins at ${waits[0]!.seconds.toFixed(2)} s.`);
    }
  });
});

describe("the full shot", () => {
  const cells = [
    ["a fast screw", "two-molds.yaml", ["delivery.recharge={ gamma: [2.4 s, 0.8 s] }"]],
    ["a slow screw", "three-molds.yaml", []],
  ] as const;

  it.each(cells)("of %s comes before the mold opens, or not, as the record has it", (_, file, set) => {
    const run = runOnce(readDrillCell(file, set));
    const drills = shotsFull(run);
    expect(drills.length).toBeGreaterThan(5);
    for (const drill of drills) {
      const { at } = drill.charts[0]!;
      const full = lasting(run.events, "plasticator").find(({ seconds }) => seconds > at)!.seconds;
      const opens = run.events.find(({ role, seconds }) => role === "mold.open" && seconds > at)!;
      expect(rightOf(drill).text.startsWith("Yes")).toBe(full < opens.seconds);
      expect(drill.exercise.ask).toContain(`station ${opens.resource} opens`);
    }
  });

  it("is asked with both answers", () => {
    expect(new Set(drillsOf("shot full").map((drill) => rightOf(drill).text.slice(0, 2)))).toEqual(
      new Set(["Ye", "No"]),
    );
  });
});

describe("half a second", () => {
  /** Seconds a shot in the second half of a simulated hour. */
  function simulated(cell: Scenario): number {
    const events = runOnce({ ...cell, run: { ...cell.run, length: 3600 } }).events;
    const drops = events.filter(
      ({ role, owner, seconds }) => role === "mold.drop" && owner === "station" && seconds > 1800,
    );
    const own = drops.filter(({ resource }) => resource === "left");
    return (own.at(-1)!.seconds - own[0]!.seconds) / (own.length - 1) / cell.stations.length;
  }
  const paths = new Map([
    ["The cooling in every mold", "stations.*.steps.cool"],
    ["The recharge", "delivery.recharge"],
    ["The parison drop", "delivery.drop"],
    ["The closing of every mold", "stations.*.steps.close"],
    ["The removal at every mold", "stations.*.steps.remove.time"],
  ]);

  it.each(drillsOf("half a second").map((drill, i) => [i + 1, drill] as const))(
    "is worth what a run gives, drill %i",
    (_, drill) => {
      const { scenario } = drill.charts[0]!.run;
      const shorter = (path: string): Scenario => shortened(scenario, path);
      const gains = drill.exercise.choices.map(({ text, because }) => {
        const period = simulated(shorter(paths.get(text)!));
        expect(because).toContain(`${period.toFixed(2)} s a shot.`);
        return { text, period };
      });
      const [best] = gains.toSorted((one, other) => one.period - other.period);
      expect(best!.text).toBe(rightOf(drill).text);
      expect(gains.filter(({ period }) => period < best!.period + 0.01)).toHaveLength(1);
    },
  );

  /** Half a second less of a fixed time. */
  function shortened(scenario: Scenario, path: string): Scenario {
    const less = (value: unknown): unknown => {
      const time = value as { readonly kind: string; readonly value: number };
      expect(time.kind).toBe("fixed");
      return { ...time, value: time.value - 0.5 };
    };
    const stations = scenario.stations.map((station) => {
      if (path.endsWith("recharge"))
        return { ...station, recharge: { by: "time", time: less((station.recharge as { time: unknown }).time) } };
      if (path.endsWith("drop"))
        return { ...station, drop: { by: "time", time: less((station.drop as { time: unknown }).time) } };
      if (path.endsWith("remove.time"))
        return { ...station, remove: { ...station.remove, time: less(station.remove.time) } };
      const step = path.endsWith("cool") ? "cool" : "close";
      return { ...station, [step]: less(station[step]) };
    });
    return { ...scenario, stations: stations as Scenario["stations"] };
  }
});

describe("a change and a fault", () => {
  const kinds = ["spot the change", "fault"].flatMap((kind) =>
    drillsOf(kind).map((drill) => [rightOf(drill).text, drill] as const),
  );

  it("are each shown once", () => {
    expect(kinds.map(([text]) => text)).toEqual([
      "The molds cool for another time.",
      "The clamps close at another speed.",
      "The screw recharges at another speed.",
      "The valve shifts at another speed.",
      "The removal takes another time.",
      "The valve sticks.",
      "The wall is too thick.",
      "The operator is absent.",
      "The screw is too small.",
    ]);
  });

  const states: Readonly<Record<string, readonly [resource: RegExp, state: string]>> = {
    cool: [/left|right/u, "cooling"],
    wall: [/left|right/u, "cooling"],
    close: [/left|right/u, "closing"],
    screw: [/plasticator/u, "recharging"],
    valve: [/valve/u, "shifting"],
    removal: [/left|right/u, "removal"],
    operator: [/left|right/u, "no operator free"],
  };

  /** Mean duration of what lies wholly in the chart. */
  function meanIn({ run, from, until }: Drill["charts"][number], [resource, state]: readonly [RegExp, string]): number {
    const names = [...new Set(run.events.map((row) => row.resource))].filter((name) => resource.test(name));
    const durations = names.flatMap((name) => {
      const own = lasting(run.events, name);
      return own.flatMap((row, i) => {
        const end = own[i + 1]?.seconds;
        return row.state === state && row.seconds >= from && end !== undefined && end <= until
          ? [end - row.seconds]
          : [];
      });
    });
    return durations.length === 0 ? 0 : durations.reduce((sum, each) => sum + each) / durations.length;
  }

  it.each(kinds)("show by their durations: %s", (_, drill) => {
    const [before, after] = drill.charts;
    for (const { text, isRight, because } of drill.exercise.choices) {
      const sign = Object.entries(states).find(([word]) => text.includes(word))![1];
      const [one, other] = [meanIn(before!, sign), meanIn(after!, sign)];
      const change = Math.abs(other - one) / Math.max(one, other, 1e-9);
      // The reason names the durations of these two charts.
      for (const mean of [one, other]) if (mean > 0) expect(because).toContain(`${mean.toFixed(2)} s`);
      if (isRight) expect(change).toBeGreaterThan(0.2);
      else expect(change).toBeLessThan(0.1);
    }
  });
});
