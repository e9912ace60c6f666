// The names of a log as the model spells them, the records of a run of the model, and the form for a stopwatch.
import { describe, expect, it } from "vitest";
import type { StepRecord } from "#analysis/log/logRecord.ts";
import { modelLine } from "#analysis/match/modelLine.ts";
import { modelNames } from "#analysis/match/modelNames.ts";
import { timingForm } from "#analysis/match/timingForm.ts";
import { doingKey } from "#analysis/match/lineLog.ts";
import { planCell } from "#cell/layers/planCell.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";

const record = (station: string, step: string, kind: StepRecord["kind"] = "step"): StepRecord => {
  return { station, step, kind, seconds: 1, line: 1, run: "" };
};

const [one, two] = [1, 2].map((stations) => planCell(scenarioOf(cellText(stations)))) as [
  ReturnType<typeof planCell>,
  ReturnType<typeof planCell>,
];

describe("the names of a log", () => {
  const naming = (renames: readonly (readonly [string, string])[] = [], plan = two) =>
    modelNames(plan, new Map(renames));
  const namesOf = ({ station, step, kind }: StepRecord) => [station, step, kind];

  it("are those of the model in any case of letters", () => {
    const { named, unmatched } = naming();
    expect(namesOf(named(record("STATION 1", "Cool")))).toEqual(["station 1", "cool", "step"]);
    expect(namesOf(named(record("Plasticator", "RECHARGE")))).toEqual(["plasticator", "recharge", "step"]);
    expect(unmatched()).toEqual([]);
  });

  it("are a step where the model has one, unless the log says that it waits", () => {
    const { named } = naming();
    expect(namesOf(named(record("station 1", "Cool", "stop")))).toEqual(["station 1", "cool", "step"]);
    expect(namesOf(named(record("station 1", "Cool", "wait")))).toEqual(["station 1", "Cool", "wait"]);
    expect(namesOf(named(record("station 1", "Wiped", "stop")))).toEqual(["station 1", "Wiped", "stop"]);
  });

  it("stay as they are where the model has none; such stations are listed once", () => {
    const { named, unmatched } = naming();
    expect(namesOf(named(record("Line 9", "Cool")))).toEqual(["Line 9", "cool", "step"]);
    expect(namesOf(named(record("Line 9", "polish")))).toEqual(["Line 9", "polish", "step"]);
    expect(unmatched()).toEqual(["Line 9"]);
  });

  it("are renamed, stations and steps; what never came and what the model lacks is listed", () => {
    const { named, unused, unknown } = naming([["M7", "Station 2"], ["Kühlen", "cool"], ["Never", "open"], ["odd", "no such"]]); // prettier-ignore
    expect(namesOf(named(record("m7", "kühlen")))).toEqual(["station 2", "cool", "step"]);
    expect(namesOf(named(record("station 1", "ODD")))).toEqual(["station 1", "no such", "step"]);
    expect(unused()).toEqual(["Never"]);
    expect(unknown).toEqual(["no such"]);
  });

  it("take a log without stations for the only station", () => {
    expect(namesOf(naming([], one).named(record("line", "cool")))[0]).toBe("station 1");
    const { named, unmatched } = naming();
    expect([namesOf(named(record("line", "cool")))[0], unmatched()]).toEqual(["line", ["line"]]);
  });

  it("are listed in bounded room", () => {
    const { named, unmatched } = naming();
    for (let i = 0; i < 2000; i++) named(record(`other ${i}`, "cool"));
    expect(unmatched().length).toBeLessThanOrEqual(501);
  });
});

describe("the line of a model", () => {
  // By hand: shift 0.25, drop 1.8, shift back 0.25, recharge 4: a shot every 6.3 s at the screw, and 13.05 s at a mold.
  const until = 60;
  const run = (from: number, more: object = {}) => modelLine({ plan: two, replication: 1, from, until, ...more })!;
  const at = (line: ReturnType<typeof run>, station: string, name: string) => line.doings.get(doingKey(station, name));
  const starts = (line: ReturnType<typeof run>, station: string, name: string) =>
    at(line, station, name)
      ?.marks()
      .map(({ time }) => Number(time.toFixed(6)));

  it("has the steps, and the waits by the name of their state", () => {
    const line = run(0);
    expect(starts(line, "station 1", "drop")).toEqual([0.25, 13.3, 26.35, 39.4, 52.45]);
    expect(at(line, "station 1", "drop")?.times[0]).toBeCloseTo(1.8, 9);
    expect(at(line, "station 1", "drop")?.kind).toBe("step");
    expect(at(line, "plasticator", "holding a full shot")?.kind).toBe("wait");
    // The screw holds a full shot from the end of its charge to the next shift: 13.05 − 2 × 6.3 = 0.45 s.
    expect(at(line, "plasticator", "holding a full shot")?.times[0]).toBeCloseTo(0.45, 9);
    expect(at(line, "station 2", "awaiting melt")?.times[0]).toBeCloseTo(6.3, 9);
  });

  it("begins with the first state that begins at its start or later", () => {
    expect(starts(run(13.3), "station 1", "drop")).toEqual([13.3, 26.35, 39.4, 52.45]);
    expect(starts(run(13.4), "station 1", "drop")).toEqual([26.35, 39.4, 52.45]);
  });

  it("ends where enough is known, and with the last state that ends within it", () => {
    const first = run(0, { isEnough: ({ step }: StepRecord) => step === "close" });
    expect([starts(first, "station 1", "close"), first.until]).toEqual([[2.05], expect.closeTo(2.65, 9)]);
    expect(run(0).until).toBeLessThanOrEqual(until);
    expect(modelLine({ plan: two, replication: 1, from: 0, until: 0.1 })).toBeUndefined();
  });

  it("names a stop by its state", () => {
    const stops = "stops: [{ name: heater band, resource: plasticator, between: 20 s, repair: 5 s, step: finish }]";
    const plan = planCell(scenarioOf(cellText(1, stops)));
    const line = modelLine({ plan, replication: 1, from: 0, until: 120 })!;
    const stopped = [...line.doings.values()].filter(({ kind }) => kind === "stop");
    expect(stopped.map(({ station, name }) => [station, name])).toContainEqual(["plasticator", "stopped"]);
    // The screw finishes its step while the repair goes on.
    for (const { times } of stopped) for (const time of times) expect(time).toBeLessThanOrEqual(5 + 1e-9);
  });
});

describe("the form for a stopwatch", () => {
  it("has the waits of a station before the step that they precede, and no row twice", () => {
    const [form, ...others] = timingForm(scenarioOf(cellText(2)));
    expect(others.map(({ station }) => station)).toEqual(["station 2"]);
    expect(form?.station).toBe("station 1");
    expect(form?.rows.map(({ name }) => name)).toEqual([
      "awaiting melt",
      "awaiting valve",
      "shift to port",
      "drop",
      "close",
      "blow",
      "cool",
      "vent",
      "open",
      "remove",
    ]);
    expect(form?.rows[0]).toEqual({ name: "awaiting melt", kind: "wait", cause: "the shot is not full yet" });
    expect(form?.rows[4]).toEqual({ name: "close", kind: "step", cause: "" });
  });
});
