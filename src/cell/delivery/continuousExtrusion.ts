// Melt all the time: a parison grows at a die that never stops, and each mold travels in, closes on it, cuts it off and travels out.
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import type { ProcessSpec, ResourceSpec, StepSpec, TimeLaw } from "#engine/compiler/stepTable.ts";
import type { ContinuousSpec, Scenario, StationSpec } from "#scenario/scenario.ts";
import { dropsOf, PLASTICATOR, shotsOf } from "#cell/words/cycleNames.ts";
import type { MeltDelivery } from "#cell/table/meltDelivery.ts";
import { rechargeSeconds, shotLaw } from "#cell/table/shotLaw.ts";
import { shotMass, shotMasses } from "#cell/table/shotMass.ts";
import { fixed, rank, servingRule, waiting, working } from "#cell/words/tableWords.ts";

/** The step in which a mold takes over a parison that is full: from here on the next one grows. */
export const CATCH = "catch the parison";

/**
 * A parison is full when as much as one shot has come since the mold before began to close; a mold that is late finds a longer
 * tail, which is excess. The die is a mold's own from its travel in to its travel out.
 */
export function continuousExtrusion(scenario: Scenario): MeltDelivery {
  return {
    resources: [plasticatorResource(scenario)],
    places: [
      { name: "die zone", tokens: 1, rule: servingRule[scenario.valve.dispatch], rank: rank.station },
      { name: "parison due", tokens: scenario.run.start === "running" ? 1 : 0, rank: rank.plasticator },
      {
        name: "parison caught",
        tokens: scenario.run.start === "running" ? 0 : 1,
        cargo: scenario.stations.length - 1,
        rank: rank.station,
      },
    ],
    processes: [plasticator(scenario)],
    stationStates: () => [
      ...["awaiting turn", "awaiting melt"].map(waiting),
      ...["travel in", "cut", "travel out"].map(working),
    ],
    parison,
    closeGives: [],
    afterClose,
  };
}

function plasticatorResource({ run }: Scenario): ResourceSpec {
  const states = [waiting("extruding to regrind"), working("extruding a parison")];
  return { name: PLASTICATOR, states: run.start === "running" ? states : states.toReversed() };
}

/** The parison grows for the mold that comes next in the rotation; without one all parisons are alike. */
function plasticator(scenario: Scenario): ProcessSpec {
  const { stations } = scenario;
  return {
    name: PLASTICATOR,
    resource: PLASTICATOR,
    steps: [
      {
        name: "parison",
        needs: [{ place: "parison caught", takes: "cargo" }],
        shows: [{ resource: PLASTICATOR, state: "extruding a parison" }],
        time: { laws: stations.map((_, k) => parisonLaw(scenario, stations[(k + 1) % stations.length]!)) },
        gives: [{ place: "parison due" }],
      },
      { name: "tail", shows: [{ resource: PLASTICATOR, state: "extruding to regrind" }] },
    ],
  };
}

function parisonLaw(scenario: Scenario, station: StationSpec): TimeLaw {
  const law = shotLaw(station.recharge, station);
  const slower = slowedBy(scenario);
  return slower === 1 ? law : { ...law, factor: (law.factor ?? 1) * slower };
}

/**
 * How many times longer than at full rate a parison takes: a matched screw is turned down to keep step with the molds at mean
 * times, but not below its slowest rate. 1 where the molds are quicker than the screw, or the rate is fixed.
 */
export function slowedBy(scenario: Scenario): number {
  const { rate, slowestRate, moldPace } = scenario.delivery as ContinuousSpec;
  if (rate === "fixed" || moldPace === undefined) return 1;
  const fastest = fullRateSeconds(scenario);
  const slowest = slowestRate === undefined ? Infinity : meanShot(scenario) / 1e6 / slowestRate;
  return fastest > 0 ? Math.max(1, Math.min(moldPace, slowest) / fastest) : 1;
}

/** Milligrams a tick that leave the die, at mean times; undefined where masses are not given. */
export function extrusionRate(scenario: Scenario): number | undefined {
  if (scenario.stations.some((station) => shotMasses(station) === undefined)) return undefined;
  const shot = meanShot(scenario);
  const seconds = fullRateSeconds(scenario) * slowedBy(scenario);
  return seconds > 0 ? shot / (seconds * TICKS_PER_SECOND) : 0;
}

/** Milligrams. */
function meanShot({ stations }: Scenario): number {
  return stations.reduce((sum, station) => sum + shotMass(station), 0) / stations.length;
}

/** Mean seconds of a parison at full rate. */
export function fullRateSeconds({ stations }: Scenario): number {
  return stations.map(rechargeSeconds).reduce((sum, each) => sum + each, 0) / stations.length;
}

function parison(station: StationSpec): readonly StepSpec[] {
  return [
    {
      name: "travel in",
      needs: [{ place: "die zone", meanwhile: "awaiting turn" }],
      shows: [{ resource: station.name, state: "travel in" }],
      time: fixed(station.travel!.in),
    },
    {
      name: CATCH,
      needs: [{ place: "parison due", meanwhile: "awaiting melt" }],
      gives: [{ place: "parison caught" }],
      counts: { [dropsOf(station.name)]: 1 },
    },
  ];
}

/** The shot is the mold's once it is cut off. */
function afterClose(station: StationSpec): readonly StepSpec[] {
  return [
    {
      name: "cut",
      shows: [{ resource: station.name, state: "cut" }],
      time: fixed(station.travel!.cut),
      counts: { [shotsOf(station.name)]: 1 },
    },
    {
      name: "travel out",
      shows: [{ resource: station.name, state: "travel out" }],
      time: fixed(station.travel!.out),
      gives: [{ place: "die zone" }],
    },
  ];
}
