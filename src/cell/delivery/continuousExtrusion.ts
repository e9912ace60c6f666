// Continuous extrusion: a parison always grows at the die, and each mold travels in, closes on it, cuts it off and travels out.
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import type { DrawnTime } from "#engine/compiler/stepTable.ts";
import type { ContinuousSpec, Scenario, StationSpec } from "#scenario/scenario.ts";
import type { CellProcess, CellResource, CellStep } from "#cell/words/cellTable.ts";
import { dropsOf, PLASTICATOR, shotsOf } from "#cell/words/cycleNames.ts";
import { stateNames } from "#cell/words/stateNames.ts";
import { named } from "#cell/words/stepNames.ts";
import type { MeltDelivery } from "#cell/table/meltDelivery.ts";
import { rechargeSeconds, shotTime } from "#cell/table/shotTime.ts";
import { shotMass, shotMasses } from "#cell/table/shotMass.ts";
import { fixed, rank, servingRule, waiting, working } from "#cell/words/tableWords.ts";

const DIE_ZONE = "die zone";
const UNDER_DIE = "place under the die";
const PARISON_DUE = "parison due";
const PARISON_CAUGHT = "parison caught";

/**
 * A parison is full when as much as one shot has come since the mold before began to close; a mold that is late finds a longer
 * tail, which is excess. In an exclusive die zone a mold travels in when the one before has traveled out. In a shared one it may
 * travel in while the one before travels out, and catches its parison when that one is out.
 */
export function continuousExtrusion(scenario: Scenario): MeltDelivery {
  return {
    resources: [plasticatorResource(scenario)],
    places: [
      { name: DIE_ZONE, tokens: 1, rule: servingRule[scenario.valve.dispatch], rank: rank.station },
      ...(isShared(scenario) ? [{ name: UNDER_DIE, tokens: 1, rank: rank.station }] : []),
      { name: PARISON_DUE, tokens: scenario.run.start === "running" ? 1 : 0, rank: rank.plasticator },
      {
        name: PARISON_CAUGHT,
        tokens: scenario.run.start === "running" ? 0 : 1,
        cargo: scenario.stations.length - 1,
        rank: rank.station,
      },
    ],
    processes: [plasticator(scenario)],
    stationStates: () => [
      ...[stateNames.awaitingTurn, stateNames.awaitingMelt].map(waiting),
      ...[stateNames.travelIn, stateNames.cut, stateNames.travelOut].map(working),
    ],
    parison: (station) => parison(station, isShared(scenario)),
    closeGives: [],
    afterClose: (station) => afterClose(station, isShared(scenario)),
  };
}

const isShared = ({ delivery }: Scenario): boolean => (delivery as ContinuousSpec).dieZone === "shared";

function plasticatorResource({ run }: Scenario): CellResource {
  const states = [waiting(stateNames.extrudingToRegrind), working(stateNames.extrudingParison)];
  return { name: PLASTICATOR, kind: "screw", states: run.start === "running" ? states : states.toReversed() };
}

/** The parison grows for the mold that comes next in the rotation; without one all parisons are alike. */
function plasticator(scenario: Scenario): CellProcess {
  const { stations } = scenario;
  return {
    name: PLASTICATOR,
    kind: "screw",
    resource: PLASTICATOR,
    steps: [
      {
        ...named("screw.extrude"),
        needs: [{ place: PARISON_CAUGHT, takes: "cargo" }],
        shows: [{ resource: PLASTICATOR, state: stateNames.extrudingParison }],
        time: {
          distributions: stations.map((_, k) => parisonDistribution(scenario, stations[(k + 1) % stations.length]!)),
        },
        gives: [{ place: PARISON_DUE }],
      },
      { ...named("screw.overrun"), shows: [{ resource: PLASTICATOR, state: stateNames.extrudingToRegrind }] },
    ],
  };
}

function parisonDistribution(scenario: Scenario, station: StationSpec): DrawnTime {
  const distribution = shotTime(station.recharge, station);
  const slower = slowedBy(scenario);
  return slower === 1 ? distribution : { ...distribution, factor: (distribution.factor ?? 1) * slower };
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

/** From the catch on the next parison grows. */
function parison(station: StationSpec, shared: boolean): readonly CellStep[] {
  return [
    {
      ...named("mold.travelIn"),
      needs: [{ place: DIE_ZONE, meanwhile: stateNames.awaitingTurn }],
      shows: [{ resource: station.name, state: stateNames.travelIn }],
      time: fixed(station.travel!.in),
    },
    {
      ...named("mold.catch"),
      needs: [
        ...(shared ? [{ place: UNDER_DIE, meanwhile: stateNames.awaitingTurn }] : []),
        { place: PARISON_DUE, meanwhile: stateNames.awaitingMelt },
      ],
      gives: [{ place: PARISON_CAUGHT }],
      counts: { [dropsOf(station.name)]: 1 },
    },
  ];
}

/** The shot is the mold's once it is cut off. */
function afterClose(station: StationSpec, shared: boolean): readonly CellStep[] {
  return [
    {
      ...named("mold.cut"),
      shows: [{ resource: station.name, state: stateNames.cut }],
      time: fixed(station.travel!.cut),
      counts: { [shotsOf(station.name)]: 1 },
    },
    // It needs nothing, so that a stop holds it back as it does the travel out.
    ...(shared ? [{ ...named("mold.leaveDie"), needs: [], gives: [{ place: DIE_ZONE }] }] : []),
    {
      ...named("mold.travelOut"),
      shows: [{ resource: station.name, state: stateNames.travelOut }],
      time: fixed(station.travel!.out),
      gives: [{ place: shared ? UNDER_DIE : DIE_ZONE }],
    },
  ];
}
