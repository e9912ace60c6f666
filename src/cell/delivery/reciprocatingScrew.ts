// Melt from a reciprocating screw: it recharges against a closed valve, the valve shifts, the screw drops a parison, the valve shifts back.
import type { NeedSpec, PlaceSpec, DrawnTime } from "#engine/compiler/stepTable.ts";
import { invariant } from "#foundation/invariant.ts";
import type { ReciprocatingScrewSpec, Scenario, StationSpec } from "#scenario/scenario.ts";
import type { CellProcess, CellResource } from "#cell/words/cellTable.ts";
import { dropsOf, PLASTICATOR, rechargesCounter, VALVE } from "#cell/words/cycleNames.ts";
import { FREE_VALVE, FULL_SHOT, VALVE_TO_SHIFT_BACK } from "#cell/words/placeNames.ts";
import { stateNames } from "#cell/words/stateNames.ts";
import { named } from "#cell/words/stepNames.ts";
import type { MeltDelivery } from "#cell/table/meltDelivery.ts";
import { drop, shiftToPort, stationStates, valveResource } from "#cell/table/selectorValve.ts";
import { rechargeSeconds, shotTime } from "#cell/table/shotTime.ts";
import { shotMasses } from "#cell/table/shotMass.ts";
import { fixed, rank, servingRule, waiting, working } from "#cell/words/tableWords.ts";

/** The order of ties: plasticator, valve. */
export function reciprocatingScrew(scenario: Scenario): MeltDelivery {
  const isWatched = specOf(scenario).rechargeStarts === "mold-closed";
  return {
    resources: [plasticatorResource(scenario), valveResource(scenario)],
    places: places(scenario),
    processes: [plasticator(scenario), valve(scenario)],
    stationStates,
    parison: (station) => [
      // The drop begins at once, as it needs nothing more.
      { ...shiftToPort(scenario, station, PLASTICATOR), counts: { [dropsOf(station.name)]: 1 } },
      drop(station, PLASTICATOR),
    ],
    closeGives: isWatched ? [{ place: MOLD_CLOSED }] : [],
  };
}

function specOf({ delivery }: Scenario): ReciprocatingScrewSpec {
  invariant(delivery.kind === "reciprocating-screw", "each kind of delivery has a table of its own", {});
  return delivery;
}

function plasticatorResource(scenario: Scenario): CellResource {
  const { run } = scenario;
  const delivery = specOf(scenario);
  const holding = waiting(stateNames.holdingShot);
  const waitsForMold = delivery.rechargeStarts === "mold-closed" ? [waiting(stateNames.awaitingClosedMold)] : [];
  const others = [working(stateNames.valveShifting), working(stateNames.delivering), ...waitsForMold];
  const recharging = working(stateNames.recharging);
  return {
    name: PLASTICATOR,
    kind: "screw",
    states: run.start === "running" ? [holding, recharging, ...others] : [recharging, holding, ...others],
  };
}

const NEUTRAL = "neutral for recharge";
const MOLD_CLOSED = "mold closed";

function places(scenario: Scenario): PlaceSpec[] {
  const isRunning = scenario.run.start === "running";
  const firstCharge = { tokens: isRunning ? 0 : 1, cargo: scenario.stations.length };
  return [
    {
      name: FULL_SHOT,
      tokens: isRunning ? 1 : 0,
      rule: servingRule[scenario.valve.dispatch],
      rank: rank.plasticator,
    },
    { name: FREE_VALVE, tokens: 1, rank: rank.valve },
    { name: VALVE_TO_SHIFT_BACK, tokens: 0, rank: rank.station },
    { name: NEUTRAL, ...firstCharge, rank: rank.valve },
    { name: MOLD_CLOSED, ...firstCharge, rank: rank.station },
  ];
}

function plasticator(scenario: Scenario): CellProcess {
  const neutral: NeedSpec = { place: NEUTRAL, takes: "cargo" };
  const closed: NeedSpec = { place: MOLD_CLOSED, meanwhile: stateNames.awaitingClosedMold, takes: "cargo" };
  return {
    name: PLASTICATOR,
    kind: "screw",
    resource: PLASTICATOR,
    steps: [
      {
        ...named("screw.recharge"),
        needs: specOf(scenario).rechargeStarts === "mold-closed" ? [neutral, closed] : [neutral],
        shows: [{ resource: PLASTICATOR, state: stateNames.recharging }],
        time: { distributions: rechargeDistributions(scenario) },
        gives: [{ place: FULL_SHOT }],
        counts: { [rechargesCounter]: 1 },
      },
      { ...named("screw.hold"), shows: [{ resource: PLASTICATOR, state: stateNames.holdingShot }] },
    ],
  };
}

/** One distribution for each station that may have been served, and a last one for the first charge of a cold start. */
function rechargeDistributions(scenario: Scenario): DrawnTime[] {
  const { stations } = scenario;
  const delivery = specOf(scenario);
  const distributions = stations.map((station) => shotTime(station.recharge, station));
  const largest = distributions[largestShot(stations)]!;
  const next =
    delivery.shotFor === "next"
      ? distributions.map((_, k) => distributions[(k + 1) % distributions.length]!)
      : distributions;
  return [...next, delivery.shotFor === "next" ? distributions[0]! : largest];
}

/** Index of the station with the largest shot; where masses are not given, of the one that recharges for longest. */
function largestShot(stations: readonly StationSpec[]): number {
  const masses = stations.map((station) => shotMasses(station)?.shot);
  const sizes = masses.includes(undefined) ? stations.map(rechargeSeconds) : masses.map((mass) => mass ?? 0);
  return sizes.indexOf(Math.max(...sizes));
}

function valve(scenario: Scenario): CellProcess {
  return {
    name: VALVE,
    kind: "valve",
    resource: VALVE,
    steps: [
      {
        ...named("valve.toNeutral"),
        needs: [{ place: VALVE_TO_SHIFT_BACK, takes: "cargo" }],
        shows: [
          { resource: VALVE, state: stateNames.shifting },
          { resource: PLASTICATOR, state: stateNames.valveShifting },
        ],
        // A valve closes even while the screw stands still.
        stoppedBy: [VALVE],
        time: fixed(scenario.valve.shift),
        gives: [{ place: FREE_VALVE }, { place: NEUTRAL }],
      },
      { ...named("valve.neutral"), shows: [{ resource: VALVE, state: stateNames.neutral }] },
    ],
  };
}
