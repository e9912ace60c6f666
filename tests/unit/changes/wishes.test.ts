// The changes that are tried on a cell: names, settings and what they shorten.
import { describe, expect, it } from "vitest";
import { leversOf } from "#analysis/changes/levers.ts";
import { stationGroups } from "#analysis/changes/stationGroups.ts";
import type { Wish } from "#analysis/changes/wish.ts";
import { wishesFor } from "#analysis/changes/wishes.ts";
import type { CalendarSpec, ChangeSpec, Scenario, StationSpec, StopSpec } from "#scenario/scenario.ts";
import { oneStation } from "../../support/madeOrder.ts";
import { always, server } from "../../support/takeawayCell.ts";

const [station] = oneStation.stations;
const named = (name: string, cavities = 2) => ({ ...station!, name, cavities });
const cell = (more: Partial<Scenario> = {}): Scenario => ({ ...oneStation, ...more });
const wishNamed = (scenario: Scenario, name: string): Wish | undefined =>
  wishesFor(scenario).find((wish) => wish.name === name);
const namesOf = (scenario: Scenario) => wishesFor(scenario).map(({ name }) => name);

const stop = (name: string, resource: string): StopSpec => ({
  name,
  resource,
  comes: { by: "calendar", between: always(600) },
  repair: always(60),
  start: "running",
  by: "itself",
  shift: "any",
  step: "finish",
});
const change = (name: string, kind: ChangeSpec["kind"]): ChangeSpec => ({ name, kind, at: 60, time: always(60) });
const calendar = (breaks: CalendarSpec["breaks"], rests: number): CalendarSpec => ({
  begins: "2026-11-30 06:00",
  clockChanges: [],
  off: [],
  operators: [],
  shifts: [
    { start: "06:00", end: "14:00", breaks: [], stretches: [], pauses: [] },
    {
      start: "14:00",
      end: "22:00",
      breaks: Array.from({ length: rests }, () => ({ at: "18:00", time: 900 })),
      stretches: [],
      pauses: [],
    },
  ],
  breaks,
});

describe("the changes that are tried", () => {
  it("are few for a cell without crew, servers and disturbances", () => {
    expect(namesOf(cell())).toEqual([
      "cooling −5 %",
      "removal −10 %",
      "screw 10 % faster",
      "valve shift −0.1 s",
      "one station more",
    ]);
  });

  it("shorten steps by their share of the time", () => {
    const [cooling, removal, screw] = wishesFor(cell());
    expect(cooling?.prospect).toEqual({ steps: ["mold.cool"], of: ["station 01"], share: 0.05 });
    expect(removal?.prospect).toEqual({ steps: ["mold.remove"], of: ["station 01"], share: 0.1 });
    expect(screw).toMatchObject({ joins: true, prospect: { share: 0.1 } });
  });

  it("shift the valve by 0.1 s less, or by half where that is more", () => {
    const shifted = (seconds: number) => wishesFor(cell({ valve: { ...oneStation.valve, shift: always(seconds) } }));
    const valve = (seconds: number) => shifted(seconds).find(({ name }) => name.startsWith("valve"));
    expect(valve(0.5)?.prospect).toMatchObject({ share: 0.2 });
    expect(valve(0.2)).toMatchObject({ name: "valve shift −0.1 s", prospect: { share: 0.5 } });
    expect(valve(0.19)).toMatchObject({ name: "valve shift −50 %", prospect: { share: 0.5 } });
    expect(valve(0)).toBeUndefined();
  });

  it("give an estimated cooling time a number, as its text has none", () => {
    const estimated: StationSpec = { ...station!, cool: always(8.1234567), estimated: ["cool"] };
    const cooling = (each: StationSpec) => wishNamed(cell({ stations: [each] }), "cooling −5 %")?.alternatives;
    // By hand: 95 % of 8.1234567 s to six digits.
    expect(cooling(estimated)).toContainEqual(["stations.*.steps.cool=7.71728 s"]);
    expect(JSON.stringify(cooling({ ...estimated, estimated: [] }))).not.toContain("7.7");
  });

  it("add a station to each entry that could have one more", () => {
    const more = wishNamed(cell({ stations: [named("side 1"), named("side 2")] }), "one station more");
    expect(more).toMatchObject({ adds: 1, prospect: { resources: ["side 1", "side 2"], share: 1 / 3 } });
    expect(more?.alternatives).toEqual([
      ["stations.count=3"],
      ["stations.side.count=3"],
      ["stations[0].count=2"],
      ["stations[1].count=2"],
    ]);
    const different = cell({ stations: [named("left"), named("right", 3)] });
    expect(wishNamed(different, "one station more at right")?.alternatives).toEqual([
      ["stations.right.count=2"],
      ["stations[0].count=2"],
    ]);
  });

  it("add an operator where there are any, and to each work shift", () => {
    const crew = wishNamed(cell({ operators: 2 }), "one operator more");
    expect(crew).toMatchObject({ joins: true, prospect: { isCrew: true, share: 1 / 3 } });
    expect(crew?.alternatives).toEqual([["crew.operators=3"]]);
    const inShifts = cell({ operators: 2, calendar: calendar("run on", 0) });
    expect(wishNamed(inShifts, "one operator more")?.alternatives).toEqual([
      ["crew.operators=3"],
      ["calendar.shifts.*.operators=+1"],
    ]);
    expect(namesOf(cell())).not.toContain("walks half as long");
    expect(wishNamed(cell({ walk: always(2) }), "walks half as long")).toMatchObject({
      alternatives: [["crew.walk=-50 %"]],
      prospect: { steps: ["crew.walk"], share: 0.5 },
    });
  });

  it("give each server less time and one place more", () => {
    const served = cell({ takeaway: [server("belt", always(9), { places: 4 })] });
    expect(wishNamed(served, "belt −10 %")).toMatchObject({ prospect: { of: ["belt"], share: 0.1 } });
    expect(wishNamed(served, "belt: one place more")).toMatchObject({
      alternatives: [["takeaway.belt.places=5"]],
      prospect: { of: ["belt"], share: 0.2 },
    });
  });

  it("take away each kind of stop once, and halve it", () => {
    const stopped = cell({ stops: [stop("jam", "a"), stop("jam", "b"), stop("heater", "plasticator")] });
    expect(namesOf(stopped).slice(5)).toEqual([
      "no jam",
      "half the time of jam",
      "no heater",
      "half the time of heater",
      "no disturbance",
    ]);
    expect(wishNamed(stopped, "no jam")).toEqual({
      name: "no jam",
      alternatives: [["stops.jam=null"]],
      cause: { name: "jam", kind: "stop" },
      prospect: { stop: "jam", share: 1 },
    });
    expect(wishNamed(stopped, "half the time of jam")).toMatchObject({ prospect: { stop: "jam", share: 0.5 } });
    expect(wishNamed(stopped, "no disturbance")?.alternatives).toEqual([["stops.jam=null", "stops.heater=null"]]);
    expect(namesOf(cell({ stops: [stop("jam", "a")] }))).not.toContain("no disturbance");
  });

  it("take away planned changes by their kind, cold starts and breaks", () => {
    const startUp = { afterOff: 60, heatUp: 60 } as NonNullable<Scenario["startUp"]>;
    const changes = [change("to red", "color"), change("to blue", "color"), change("new mold", "mold")];
    const disturbed = cell({ changes, startUp, calendar: calendar("stop", 1) });
    expect(wishesFor(disturbed).flatMap(({ cause }) => (cause ? [[cause.name, cause.kind]] : []))).toEqual([
      ["color changes", "change"],
      ["mold change", "change"],
      ["cold starts", "start-up"],
      ["breaks", "break"],
      ["all", "all"],
    ]);
    expect(wishNamed(disturbed, "no color changes")?.alternatives).toEqual([
      ["changes.to red=null", "changes.to blue=null"],
    ]);
    expect(wishNamed(disturbed, "no breaks")?.prospect).toEqual({ unknown: true });
    const runsOn = cell({ calendar: calendar("run on", 1) });
    expect(wishNamed(runsOn, "no breaks")?.prospect).toEqual({ isCrew: true, share: 1 });
    expect(namesOf(cell({ calendar: calendar("stop", 0) }))).not.toContain("no breaks");
  });
});

describe("stations of one kind", () => {
  it("are one group whatever their names, products and priorities", () => {
    const stations = [named("side 1"), { ...named("side 2"), product: "cap", priority: 3 }];
    const groups = stationGroups(stations);
    expect(groups.map(({ of, members }) => [of, members.length])).toEqual([["", 2]]);
    expect(groups[0]?.paths).toEqual([
      ["stations.*"],
      ["stations.side 1", "stations.side 2"],
      ["stations.side"],
      ["stations[0]", "stations[1]"],
    ]);
  });

  it("are named where there are others, with the entries that count them", () => {
    const stations = [named("side 1"), named("side 2"), named("old", 1), named("side 3"), named("side 12", 1)];
    const groups = stationGroups(stations);
    expect(groups.map(({ of }) => of)).toEqual([" at side 1, side 2 and side 3", " at old and side 12"]);
    expect(groups[0]?.entries[0]).toEqual({ path: "stations.side", count: 3 });
    expect(groups[1]?.entries).toEqual([
      { path: "stations.old", count: 1 },
      { path: "stations.side", count: 1 },
      { path: "stations[0]", count: 1 },
      { path: "stations[11]", count: 1 },
    ]);
    expect(groups[1]?.paths[0]).toEqual(["stations.old", "stations.side 12"]);
  });
});

describe("a wish that a cell takes", () => {
  const scenario = cell({ stations: [named("a"), named("b")] });
  const longer = (name: string): Scenario => ({
    ...scenario,
    run: { ...scenario.run, length: 1 },
    stations: scenario.stations.map((each) => (each.name === name ? { ...each, cavities: 9 } : each)),
  });
  const wish = (more: Partial<Wish>): Wish => ({ name: "", alternatives: [], prospect: { unknown: true }, ...more });
  const settingsOf = (given: Partial<Wish>, cells: Readonly<Record<string, Scenario>>) =>
    leversOf(scenario, (settings) => (settings.length === 0 ? scenario : cells[settings.join("+")]), [wish(given)]);

  it("is made by the first settings that the reader takes and that change something", () => {
    const cells = { same: scenario, x: longer("a"), y: longer("b"), "x+y": longer("b") };
    const alternatives = [["refused"], ["same"], ["x"], ["y"]];
    const [lever] = settingsOf({ alternatives }, cells);
    expect(lever?.settings).toEqual(["x"]);
    // The changed cell runs as long as the cell.
    expect(lever?.scenario).toEqual({ ...longer("a"), run: scenario.run });
    expect(settingsOf({ alternatives: [["refused"], ["same"]] }, cells)).toEqual([]);
    expect(leversOf(scenario, () => undefined, [wish({ alternatives })])).toEqual([]);
  });

  it("is made by all settings that the reader takes where they belong together", () => {
    const cells = { x: longer("a"), "x+z": longer("b") };
    const [lever] = settingsOf({ alternatives: [["x"], ["y"], ["z"]], joins: true }, cells);
    expect([lever?.settings, lever?.scenario.stations[1]?.cavities]).toEqual([["x", "z"], 9]);
  });

  it("changes the stations that it names and no other", () => {
    const both = { ...scenario, stations: scenario.stations.map((each) => ({ ...each, cavities: 9 })) };
    const cells = { one: longer("a"), other: longer("b"), both };
    const takes = (only: readonly string[]) =>
      ["one", "other", "both"].filter((each) => settingsOf({ alternatives: [[each]], only }, cells).length > 0);
    expect(takes(["a"])).toEqual(["one"]);
    expect(takes(["b"])).toEqual(["other"]);
    expect(takes(["a", "b"])).toEqual(["both"]);
  });

  it("has as many stations more as it adds", () => {
    const more = { ...scenario, stations: [...scenario.stations, named("c")] };
    expect(settingsOf({ alternatives: [["more"]], adds: 1 }, { more })).toHaveLength(1);
    expect(settingsOf({ alternatives: [["more"]] }, { more })).toEqual([]);
    expect(settingsOf({ alternatives: [["x"]], adds: 1 }, { x: longer("a") })).toEqual([]);
  });
});
