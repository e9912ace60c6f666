// The cycle table of a cell with a reciprocating screw: what the screw, the valve, each station and each operator do, as data.
import type {
  NeedSpec,
  PlaceSpec,
  ProcessSpec,
  ResourceSpec,
  ServingRule,
  StateSpec,
  StepSpec,
  StepTable,
  TimeLaw,
} from "#engine/stepTable.ts";
import type { Distribution } from "#engine/distribution.ts";
import type { DispatchRule, Scenario, StationSpec, TimeOrRate } from "#scenario/scenario.ts";
import { operatorNames, partsOf, PLASTICATOR, rechargesCounter, shotsOf, VALVE } from "./cycleNames.ts";
import { shotMass } from "./shotMass.ts";

/** Which completion binds a start when several are latest at once: plasticator, valve, crew, the own step, then the others. */
const rank = { plasticator: 0, valve: 1, crew: 2, station: 4 } as const;

const servingRule: Readonly<Record<DispatchRule, ServingRule>> = {
  "first-ready": "first-come",
  "longest-waiting": "longest-since-served",
  alternate: "rotation",
  priority: "priority",
};

const working = (name: string): StateSpec => ({ name, kind: "working" });
const waiting = (name: string): StateSpec => ({ name, kind: "waiting" });
const fixed = (law: Distribution): { readonly laws: readonly TimeLaw[] } => ({ laws: [{ law }] });

/** Units: seconds and milligrams. The order of processes is the order of ties: plasticator, valve, stations. */
export function reciprocatingScrewTable(scenario: Scenario): StepTable {
  return {
    resources: [
      plasticatorResource(scenario),
      valveResource(scenario),
      ...scenario.stations.map(stationResource),
      ...operatorNames(scenario.operators).map((name) => ({ name, states: [waiting("free"), working("removing")] })),
    ],
    places: places(scenario),
    processes: [
      plasticator(scenario),
      valve(scenario),
      ...scenario.stations.map((station, k) => stationCycle(scenario, station, k)),
    ],
  };
}

function plasticatorResource({ run, delivery }: Scenario): ResourceSpec {
  const holding = waiting("holding a full shot");
  const waitsForMold = delivery.rechargeStarts === "mold-closed" ? [waiting("waiting for the mold to close")] : [];
  const others = [working("valve shifting"), working("delivering"), ...waitsForMold];
  const recharging = working("recharging");
  return {
    name: PLASTICATOR,
    states: run.start === "running" ? [holding, recharging, ...others] : [recharging, holding, ...others],
  };
}

function valveResource({ stations }: Scenario): ResourceSpec {
  return {
    name: VALVE,
    states: [waiting("neutral"), working("shifting"), ...stations.map((station) => working(`open to ${station.name}`))],
  };
}

function stationResource(station: StationSpec): ResourceSpec {
  const awaitsOperator = station.remove.by === "operator" ? [waiting("awaiting removal")] : [];
  return {
    name: station.name,
    states: [
      waiting("awaiting melt"),
      waiting("awaiting turn"),
      waiting("awaiting valve"),
      ...["valve shifting to it", "parison drop", "closing", "blowing", "cooling", "venting", "opening", "removal"].map(
        working,
      ),
      ...awaitsOperator,
      ...station.extra.map((step) => working(step.name)),
    ],
  };
}

function places(scenario: Scenario): PlaceSpec[] {
  const isRunning = scenario.run.start === "running";
  const firstCharge = { tokens: isRunning ? 0 : 1, cargo: scenario.stations.length };
  return [
    // Places are served in this order: a removal that takes no time makes its station ready within the instant.
    { name: "operators", tokens: scenario.operators, cargo: "numbered", rank: rank.crew },
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
        needs: scenario.delivery.rechargeStarts === "mold-closed" ? [neutral, closed] : [neutral],
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
function rechargeLaws({ stations, delivery }: Scenario): TimeLaw[] {
  const laws = stations.map((station) => massLaw(station.recharge, shotMass(station)));
  const largest = laws[stations.findIndex((station) => shotMass(station) === Math.max(...stations.map(shotMass)))]!;
  const next = delivery.shotFor === "next" ? laws.map((_, k) => laws[(k + 1) % laws.length]!) : laws;
  return [...next, delivery.shotFor === "next" ? laws[0]! : largest];
}

/** A measured time as it is; a rate as the time that this mass takes at it. */
function massLaw(measured: TimeOrRate, milligrams: number): TimeLaw {
  return measured.by === "time" ? { law: measured.time } : { law: measured.rate, amount: milligrams };
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
        time: fixed(scenario.valve.shift),
        gives: [{ place: "valve" }, { place: "neutral for recharge" }],
      },
      { name: "neutral", shows: [{ resource: VALVE, state: "neutral" }] },
    ],
  };
}

function stationCycle(scenario: Scenario, station: StationSpec, number: number): ProcessSpec {
  const timed = (name: string, state: string, law: Distribution): StepSpec => ({
    name,
    shows: [{ resource: station.name, state }],
    time: fixed(law),
  });
  const isWatched = scenario.delivery.rechargeStarts === "mold-closed";
  const steps: StepSpec[] = [
    shiftToPort(scenario, station),
    drop(station),
    { ...timed("close", "closing", station.close), ...(isWatched ? { gives: [{ place: "mold closed" }] } : {}) },
    timed("blow", "blowing", station.blow),
    timed("cool", "cooling", station.cool),
    timed("vent", "venting", station.vent),
    timed("open", "opening", station.open),
    ...removal(station),
  ];
  for (const extra of station.extra) {
    const after = station.remove.by === "operator" && extra.after === "remove" ? "let go" : extra.after;
    let place = steps.findIndex((step) => step.name === after) + 1;
    // Steps of one's own after the same step come in the order in which they are listed, each with those that follow it.
    while (place < steps.length && followsOn(station.extra, steps[place]!.name, extra.after)) place++;
    steps.splice(place, 0, timed(extra.name, extra.name, extra.time));
  }
  return { name: station.name, resource: station.name, cargo: number, priority: station.priority, steps };
}

/** True for a step of one's own that comes after the named step, directly or by way of others of one's own. */
function followsOn(extra: StationSpec["extra"], step: string, after: string): boolean {
  const own = extra.find((each) => each.name === step);
  return own !== undefined && (own.after === after || followsOn(extra, own.after, after));
}

function shiftToPort(scenario: Scenario, station: StationSpec): StepSpec {
  return {
    name: "shift to port",
    needs: [
      { place: "full shot", meanwhile: "awaiting melt", whileOthersTurn: "awaiting turn" },
      { place: "valve", meanwhile: "awaiting valve" },
    ],
    shows: [
      { resource: station.name, state: "valve shifting to it" },
      { resource: VALVE, state: "shifting" },
      { resource: PLASTICATOR, state: "valve shifting" },
    ],
    time: { ...fixed(scenario.valve.shift), resource: VALVE },
  };
}

function drop(station: StationSpec): StepSpec {
  return {
    name: "drop",
    shows: [
      { resource: station.name, state: "parison drop" },
      { resource: VALVE, state: `open to ${station.name}` },
      { resource: PLASTICATOR, state: "delivering" },
    ],
    time: { laws: [massLaw(station.drop, shotMass(station))] },
    gives: [{ place: "valve to be shifted back" }],
    counts: { [shotsOf(station.name)]: 1 },
  };
}

/** By machine a time; by an operator the same time with one operator held. */
function removal(station: StationSpec): StepSpec[] {
  const showsRemoval = { resource: station.name, state: "removal" };
  const removing: StepSpec = {
    name: "remove",
    shows: [showsRemoval],
    time: fixed(station.remove.time),
    counts: { [partsOf(station.name)]: station.cavities },
  };
  if (station.remove.by === "machine") return [removing];
  return [
    {
      ...removing,
      needs: [{ place: "operators", meanwhile: "awaiting removal", takes: "hand" }],
      shows: [showsRemoval, { resource: "operator 1", by: "hand", state: "removing" }],
    },
    {
      name: "let go",
      shows: [{ resource: "operator 1", by: "hand", state: "free" }],
      gives: [{ place: "operators", carries: "hand" }],
    },
  ];
}
