// Holds the demold temperature of each shot to finite volumes, rejects to closed forms and probabilities, and both to each other.
import { describe, expect, it } from "vitest";
import { replicationRunner } from "#analysis/replication/runReplication.ts";
import { shotSpreads } from "#analysis/study/shotSpread.ts";
import { planCell } from "#cell/layers/planCell.ts";
import { eventRecorder } from "#cell/records/eventRecord.ts";
import { shotRecords } from "#cell/records/shotRecord.ts";
import { runCell } from "#cell/run/runCell.ts";
import { windowWarnings } from "#report/tables/windowWords.ts";
import { readScenario } from "#scenario/resolving/readScenario.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { isLong } from "../../support/caseCount.ts";
import { cellText, scenarioOf } from "../../support/cellScenario.ts";
import { hottestByVolumes } from "../../support/wallByVolumes.ts";

// Illustrative wall: 1 mm, 0.4 W/(m K), 1e-7 m²/s, 1000 W/(m² K), so that Bi = 2.5 and Fo = 0.1 a second.
const wall =
  "{ name: HDPE, conductivity: 0.4 W/(m K), diffusivity: 1e-7 m²/s, meltTemperature: 200 °C, demoldTemperature: 80 °C }";
const product = [
  `product.material=${wall}`,
  "product.wall={ thickest: 1 mm }",
  "product.moldTemperature=10 °C",
  "stations.moldContact=1000 W/(m² K)",
];
const biot = 2.5;

function cellOf(stations: number, more: string, ...set: readonly string[]): Scenario {
  return scenarioOf(cellText(stations, `quality: { maxDemold: 80 °C }\n${more}`), ...product, "run.warmup=0 s", ...set);
}

/** Seconds until no point is above a temperature, by finite volumes; 1/Fo = 10 s. */
function secondsTo(celsius: number): number {
  const cold = { biot, temperature: 0 };
  return 10 * hottestByVolumes({ inside: { biot: 0, temperature: 0 }, outside: cold }, (celsius - 10) / 190);
}

const least = secondsTo(80);
const run = (scenario: Scenario) => runCell(planCell(scenario), { replication: 1, watchesParisons: true });
const underCooled = (rejects: readonly { readonly reason: string; readonly parts: number }[]): number =>
  rejects.find(({ reason }) => reason === "under-cooled")?.parts ?? 0;

/** Fixed times: the wall is in contact for the cooling and the vent of 0.5 s. */
const coolingFor = (contact: number): string => `${contact - 0.5} s`;

describe("the limit of the demold temperature", () => {
  // Source of the needed time: finite volumes in tests/support [C].
  it.each([
    [0.995, 1],
    [1.005, 0],
  ])("at %f of the needed time rejects the share %i", (factor, share) => {
    const [station] = run(cellOf(1, "", `stations.steps.cool=${coolingFor(least * factor)}`)).stations;
    expect(station!.parts).toBeGreaterThan(500);
    expect(underCooled(station!.rejects)).toBe(share * station!.parts);
  });

  it("rejects the parts of the station that cools too short, and no others", () => {
    const cell = cellOf(2, "");
    const stations = cell.stations.map((station, i) => ({
      ...station,
      cool: { kind: "fixed", value: least * (i === 0 ? 0.99 : 1.01) - 0.5 } as const,
    }));
    const [short, long] = run({ ...cell, stations }).stations;
    expect(underCooled(short!.rejects)).toBe(short!.parts);
    expect(underCooled(long!.rejects)).toBe(0);
    expect(long!.parts).toBeGreaterThan(500);
  });

  it("counts a contact of exactly the needed time as enough, to the microsecond", () => {
    const cell = cellOf(1, "", "stations.steps.vent=0.5 s");
    const rejects = (limit: number): number => {
      const quality = { ...cell.quality!, maxDemold: limit };
      return underCooled(run({ ...cell, quality }).stations[0]!.rejects);
    };
    // The hottest point when the mold opens after 8.5 s; it falls by about 7e-6 K in a microsecond.
    const [shot] = shotRecords(eventRecorder(cell)(1), cell);
    expect(rejects(shot!.demoldTemperature!)).toBe(0);
    expect(rejects(shot!.demoldTemperature! + 2e-5)).toBe(0);
    expect(rejects(shot!.demoldTemperature! - 2e-5)).toBeGreaterThan(500);
  });

  it("rejects as many shots as the distribution of the cooling has below the needed time", () => {
    // By hand [C]: uniform from 0.9 to 1.3 of the needed time, so that a quarter is below it.
    const cool = `stations.steps.cool={ uniform: [${least * 0.9 - 0.5} s, ${least * 1.3 - 0.5} s] }`;
    const scenario = cellOf(2, "", cool, "run.length=100 h");
    const { stations } = run(scenario);
    const [parts, rejected] = [
      stations.reduce((sum, station) => sum + station.parts, 0) / 2,
      stations.reduce((sum, station) => sum + underCooled(station.rejects), 0) / 2,
    ];
    // Half the width of a 99.9 % interval of a binomial share.
    const margin = 3.29 * Math.sqrt((0.25 * 0.75) / parts);
    expect(margin).toBeLessThan(0.007);
    expect(Math.abs(rejected / parts - 0.25)).toBeLessThan(margin);
    // The share in the window is that of all shots, though the sample contains a few hundred of them.
    const spreads = shotSpreads(scenario, [replicationRunner(scenario)({ replication: 1, scale: null })]);
    const own = spreads.filter(({ quantity }) => quantity === "demold temperature");
    expect(own.map(({ limit }) => limit?.toFixed(6))).toEqual(["80.000000", "80.000000"]);
    const beyond = own.reduce((sum, each) => sum + each.beyond, 0) / 2;
    expect(Math.abs(beyond - rejected / parts)).toBeLessThan(0.001);
    expect(windowWarnings([], spreads, 2).join("\n")).toMatch(
      /demold temperature, station 1 and station 2: above 80 °C in 2\d(\.\d)? % of the shots/u,
    );
  });
});

describe("the demold temperature of a shot", () => {
  it("is that of finite volumes for its own time in contact", () => {
    const scenario = cellOf(1, "", "stations.steps.cool={ uniform: [4 s, 12 s] }", `run.length=${isLong ? 3 : 1} min`);
    const shots = shotRecords(eventRecorder(scenario)(1), scenario).filter(({ starts }) => starts.has("open"));
    expect(shots.length).toBeGreaterThan(2);
    for (const { starts, demoldTemperature } of shots) {
      const contact = starts.get("open")! - starts.get("cool")!;
      expect(secondsTo(demoldTemperature!) / contact).toBeCloseTo(1, 3);
    }
  });

  it("falls further while the closed mold waits for the end of a stop", () => {
    // By hand [C]: the blow ends 0.25 + 1.8 + 0.6 + 0.5 s after the start of the run; the stop lasts from 5 s to 65 s.
    const stops =
      "stops: [{ name: hose, resource: station 1, clock: calendar, between: 5 s, start: fresh, repair: 60 s, step: finish }]";
    const scenario = cellOf(1, stops, "stations.steps.cool=3 s", "run.length=70 s");
    const [shot] = shotRecords(eventRecorder(scenario)(1), scenario);
    expect(shot!.starts.get("open")! - shot!.starts.get("cool")!).toBeCloseTo(65 - 3.15, 6);
    expect(shot!.demoldTemperature!).toBeLessThan(20);
    expect(underCooled(run(scenario).stations[0]!.rejects)).toBe(0);
  });

  const air =
    "stations.airDelay=0.2 s,product.volume=750 mL,product.blowPressure=6 bar,product.airSupply=8 bar,product.airConductance=4 dm³/(s bar)";
  const cool = `stations.steps.cool={ gamma: [${least} s, 1 s] }`;
  const stopping = (step: string): string =>
    `stops: [{ name: hose, resource: station 1, clock: calendar, between: { exponential: 40 s }, repair: { exponential: 8 s }, step: ${step} }]`;

  it.each([
    ["without stops", "", []],
    ["with stops that finish a step", stopping("finish"), []],
    ["with stops that hold a step", stopping("hold"), []],
    ["with stops that scrap a step", stopping("scrap"), []],
    [
      "with scrap and steps of the user's own",
      stopping("scrap"),
      [
        "stations.extra=[{ name: settle, after: close, time: 1 s }, { name: purge air, after: vent, time: { exponential: 0.4 s } }]",
      ],
    ],
    ["from the end of the fill where its air is known", stopping("scrap"), air.split(",")],
    [
      "in continuous extrusion",
      "",
      [
        "delivery={ kind: continuous, recharge: 4 s }",
        "valve={ dispatch: first-ready }",
        "stations.steps.travelIn=0.5 s",
        "stations.steps.cut=0.1 s",
        "stations.steps.travelOut=0.5 s",
      ],
    ],
  ] as const)("is above the limit as often as parts are rejects, %s", (_, stops, set) => {
    const clear = "stations.steps.clear={ time: 5 s }";
    const isContinuous = set.some((each) => each.startsWith("delivery"));
    const scenario = cellOf(2, stops, cool, clear, "run.length=10 h", ...set);
    const [first] = run(scenario).stations;
    expect(isContinuous || first!.shots > 500).toBe(true);
    const shots = shotRecords(eventRecorder(scenario)(1), scenario);
    const record = run(scenario);
    for (const { name, rejects, parts, lostShots } of record.stations) {
      const own = shots.filter((shot) => shot.station === name && shot.demoldTemperature !== null);
      const contact = record.parisons.find(({ station }) => station === name)!.contact!;
      const hot = own.filter(({ demoldTemperature }) => demoldTemperature! > 80);
      expect(contact.underCooled / contact.shots).toBeGreaterThan(0.1);
      expect([contact.shots, contact.underCooled]).toEqual([own.length, hot.length]);
      // A shot that is lost or still in the mold after the opening is not judged.
      const unjudged = own.length - parts / 2;
      expect(unjudged).toBeLessThanOrEqual(lostShots + 1);
      expect(hot.length - underCooled(rejects) / 2).toBeGreaterThanOrEqual(0);
      expect(hot.length - underCooled(rejects) / 2).toBeLessThanOrEqual(unjudged);
    }
  });
});

describe("a limit of the demold temperature", () => {
  const codes = (...set: readonly string[]): readonly string[] =>
    readScenario(cellText(1, "quality: { maxDemold: 80 °C }"), { name: "test", file: "test.yaml", set }).issues.map(
      ({ code }) => code,
    );

  it.each([
    ["demold-unknown", []],
    ["demold-unknown", ["product.material=HDPE"]],
    ["demold-outside", [...product, "quality.maxDemold=10 °C"]],
    ["demold-outside", [...product, "quality.maxDemold=200 °C"]],
    [
      "demold-outside",
      [...product, "product.insideAir={ transfer: 50 W/(m² K), temperature: 40 °C }", "quality.maxDemold=30 °C"],
    ],
    ["demold-mold-varies", [...product, "stations.moldResistance=0.01 K/W"]],
  ])("is refused with %s", (code, set) => {
    expect(codes(...set)).toContain(code);
  });

  it("is accepted between mold and melt", () => {
    expect(codes(...product).filter((code) => code.startsWith("demold"))).toEqual([]);
  });
});
