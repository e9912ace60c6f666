// Melt from a reciprocating screw: it recharges against a closed valve, the valve shifts, the screw drops a parison, the valve shifts back.
import type { NeedSpec, PlaceSpec, ProcessSpec, ResourceSpec, TimeLaw } from "#engine/compiler/stepTable.ts";
import { invariant } from "#foundation/invariant.ts";
import type { ReciprocatingScrewSpec, Scenario, StationSpec } from "#scenario/scenario.ts";
import { dropsOf, PLASTICATOR, rechargesCounter, VALVE } from "#cell/words/cycleNames.ts";
import type { MeltDelivery } from "#cell/table/meltDelivery.ts";
import { drop, shiftToPort, valveResource } from "#cell/table/selectorValve.ts";
import { rechargeSeconds, shotLaw } from "#cell/table/shotLaw.ts";
import { shotMasses } from "#cell/table/shotMass.ts";
import { fixed, rank, servingRule, waiting, working } from "#cell/words/tableWords.ts";

/** The order of ties: plasticator, valve. */
export function reciprocatingScrew(scenario: Scenario): MeltDelivery {
  const isWatched = specOf(scenario).rechargeStarts === "mold-closed";
  return {
    resources: [plasticatorResource(scenario), valveResource(scenario)],
    places: places(scenario),
    processes: [plasticator(scenario), valve(scenario)],
    stationStates: () => [
      ...["awaiting melt", "awaiting turn", "awaiting valve"].map(waiting),
      ...["valve shifting to it", "parison drop"].map(working),
    ],
    parison: (station) => [
      // The drop begins at once, as it needs nothing more.
      { ...shiftToPort(scenario, station, PLASTICATOR), counts: { [dropsOf(station.name)]: 1 } },
      drop(station, PLASTICATOR),
    ],
    closeGives: isWatched ? [{ place: "mold closed" }] : [],
  };
}

function specOf({ delivery }: Scenario): ReciprocatingScrewSpec {
  invariant(delivery.kind === "reciprocating-screw", "each kind of delivery has a table of its own", {});
  return delivery;
}

function plasticatorResource(scenario: Scenario): ResourceSpec {
  const { run } = scenario;
  const delivery = specOf(scenario);
  const holding = waiting("holding a full shot");
  const waitsForMold = delivery.rechargeStarts === "mold-closed" ? [waiting("waiting for the mold to close")] : [];
  const others = [working("valve shifting"), working("delivering"), ...waitsForMold];
  const recharging = working("recharging");
  return {
    name: PLASTICATOR,
    states: run.start === "running" ? [holding, recharging, ...others] : [recharging, holding, ...others],
  };
}

function places(scenario: Scenario): PlaceSpec[] {
  const isRunning = scenario.run.start === "running";
  const firstCharge = { tokens: isRunning ? 0 : 1, cargo: scenario.stations.length };
  return [
    {
      name: "full shot",
      tokens: isRunning ? 1 : 0,
      rule: servingRule[scenario.valve.dispatch],
      rank: rank.plasticator,
    },
    { name: "valve", tokens: 1, rank: rank.valve },
    { name: "valve to be shifted back", tokens: 0, rank: rank.station },
    { name: "neutral for recharge", ...firstCharge, rank: rank.valve },
    { name: "mold closed", ...firstCharge, rank: rank.station },
  ];
}

function plasticator(scenario: Scenario): ProcessSpec {
  const neutral: NeedSpec = { place: "neutral for recharge", takes: "cargo" };
  const closed: NeedSpec = { place: "mold closed", meanwhile: "waiting for the mold to close", takes: "cargo" };
  return {
    name: PLASTICATOR,
    resource: PLASTICATOR,
    steps: [
      {
        name: "recharge",
        needs: specOf(scenario).rechargeStarts === "mold-closed" ? [neutral, closed] : [neutral],
        shows: [{ resource: PLASTICATOR, state: "recharging" }],
        time: { laws: rechargeLaws(scenario) },
        gives: [{ place: "full shot" }],
        counts: { [rechargesCounter]: 1 },
      },
      { name: "hold", shows: [{ resource: PLASTICATOR, state: "holding a full shot" }] },
    ],
  };
}

/** One law for each station that may have been served, and a last one for the first charge of a cold start. */
function rechargeLaws(scenario: Scenario): TimeLaw[] {
  const { stations } = scenario;
  const delivery = specOf(scenario);
  const laws = stations.map((station) => shotLaw(station.recharge, station));
  const largest = laws[largestShot(stations)]!;
  const next = delivery.shotFor === "next" ? laws.map((_, k) => laws[(k + 1) % laws.length]!) : laws;
  return [...next, delivery.shotFor === "next" ? laws[0]! : largest];
}

/** Index of the station with the largest shot; where masses are not given, of the one that recharges for longest. */
function largestShot(stations: readonly StationSpec[]): number {
  const masses = stations.map((station) => shotMasses(station)?.shot);
  const sizes = masses.includes(undefined) ? stations.map(rechargeSeconds) : masses.map((mass) => mass ?? 0);
  return sizes.indexOf(Math.max(...sizes));
}

function valve(scenario: Scenario): ProcessSpec {
  return {
    name: VALVE,
    resource: VALVE,
    steps: [
      {
        name: "shift to neutral",
        needs: [{ place: "valve to be shifted back", takes: "cargo" }],
        shows: [
          { resource: VALVE, state: "shifting" },
          { resource: PLASTICATOR, state: "valve shifting" },
        ],
        // A valve closes even while the screw stands still.
        stoppedBy: [VALVE],
        time: fixed(scenario.valve.shift),
        gives: [{ place: "valve" }, { place: "neutral for recharge" }],
      },
      { name: "neutral", shows: [{ resource: VALVE, state: "neutral" }] },
    ],
  };
}
