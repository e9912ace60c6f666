// Melt from one accumulator before the valve: the screw goes on filling its chamber while a parison drops, until it is full.
import { TICKS_PER_SECOND } from "#engine/sampler.ts";
import type { PlaceSpec, ProcessSpec, ResourceSpec, StepSpec, TimeLaw } from "#engine/stepTable.ts";
import type { AccumulatorHeadSpec, Scenario, StationSpec, TimeOrRate } from "#scenario/scenario.ts";
import { dropsOf, PLASTICATOR, RAM, rechargesCounter, shotsOf, VALVE } from "./cycleNames.ts";
import type { MeltDelivery } from "./meltDelivery.ts";
import { shotMass } from "./shotMass.ts";
import { fixed, massLaw, rank, servingRule, waiting, working } from "./tableWords.ts";

/** What a recharge adds after the next shot is complete, to fill the chamber. */
export const BEYOND = "fill beyond the shot";

/**
 * A recharge replaces a shot and may begin when its drop begins; recharges follow one another without a gap. A shift needs the
 * largest shot in the chamber: it is there as soon as no more is missing than the chamber holds beyond it, so that each
 * recharge is cut in two at that point. Where the chamber holds several shots, they are counted in shots of the largest.
 */
export function commonAccumulator(scenario: Scenario): MeltDelivery {
  return {
    resources: [plasticatorResource(scenario), ramResource(), valveResource(scenario)],
    places: places(scenario),
    processes: [plasticator(scenario), valve(scenario)],
    stationStates: () => [
      ...["awaiting melt", "awaiting turn", "awaiting valve"].map(waiting),
      ...["valve shifting to it", "parison drop"].map(working),
    ],
    parison: (station) => [shiftToPort(scenario, station), begin(station), drop(station)],
    closeGives: [],
  };
}

function plasticatorResource({ run }: Scenario): ResourceSpec {
  const [holding, recharging] = [waiting("holding a full shot"), working("recharging")];
  return { name: PLASTICATOR, states: run.start === "running" ? [holding, recharging] : [recharging, holding] };
}

function ramResource(): ResourceSpec {
  return { name: RAM, states: [waiting("waiting for the valve"), working("delivering")] };
}

function valveResource({ stations }: Scenario): ResourceSpec {
  const open = stations.map((station) => working(`open to ${station.name}`));
  return { name: VALVE, states: [waiting("neutral"), working("shifting"), ...open] };
}

const milligrams = (kilograms: number): number => Math.round(kilograms * 1e6);

/** What the chamber holds beyond the largest shot: so many more whole shots of it, and the rest. */
function reserveOf({ stations, delivery }: Scenario): {
  readonly shots: number;
  readonly rest: number;
  readonly largest: number;
} {
  const largest = Math.max(...stations.map(shotMass));
  const beyond = milligrams((delivery as AccumulatorHeadSpec).shotCapacity ?? 0) - largest;
  const shots = Math.floor(beyond / largest);
  return { shots, rest: beyond - shots * largest, largest };
}

function places(scenario: Scenario): PlaceSpec[] {
  const { run, valve: spec } = scenario;
  const full = run.start === "running" ? 1 + reserveOf(scenario).shots : 0;
  return [
    { name: "full shot", tokens: full, rule: servingRule[spec.dispatch], rank: rank.plasticator },
    { name: "valve", tokens: 1, rank: rank.valve },
    { name: "valve to be shifted back", tokens: 0, rank: rank.station },
    { name: "room in the chamber", tokens: 0, rank: rank.station },
  ];
}

function plasticator(scenario: Scenario): ProcessSpec {
  const { run } = scenario;
  const recharging = { resource: PLASTICATOR, state: "recharging" };
  const [toShot, beyond] = rechargeLaws(scenario);
  return {
    name: PLASTICATOR,
    resource: PLASTICATOR,
    begins: run.start === "running" ? "recharge" : "fill at first",
    steps: [
      {
        name: "recharge",
        needs: [{ place: "room in the chamber", takes: "cargo" }],
        shows: [recharging],
        time: { laws: toShot },
        gives: [{ place: "full shot" }],
        counts: { [rechargesCounter]: 1 },
      },
      { name: BEYOND, time: { laws: beyond } },
      { name: "hold", shows: [{ resource: PLASTICATOR, state: "holding a full shot" }], next: "recharge" },
      ...firstFill(scenario),
    ],
  };
}

/** For each station the law of what makes the next shot complete, and of what comes after that. */
function rechargeLaws(scenario: Scenario): readonly [TimeLaw[], TimeLaw[]] {
  const { rest } = reserveOf(scenario);
  const parted = scenario.stations.map((station) => partRecharge(station.recharge, shotMass(station), rest));
  return [parted.map(([first]) => first), parted.map(([, second]) => second)];
}

/** A fixed time is parted in whole ticks, so that both parts together are exactly what the whole was. */
function partRecharge(recharge: TimeOrRate, shot: number, rest: number): readonly [TimeLaw, TimeLaw] {
  const later = Math.min(rest, shot);
  const law = recharge.by === "time" ? recharge.time : recharge.rate;
  if (law.kind !== "fixed") return [partOf(recharge, shot, shot - later), partOf(recharge, shot, later)];
  const seconds = recharge.by === "time" ? law.value : shot / 1e6 / law.value;
  const ticks = Math.round(seconds * TICKS_PER_SECOND);
  const beyond = Math.floor((ticks * later) / shot);
  return [ofTicks(ticks - beyond), ofTicks(beyond)];
}

const ofTicks = (ticks: number): TimeLaw => ({ law: { kind: "fixed", value: ticks }, factor: 1 / TICKS_PER_SECOND });

function partOf(recharge: TimeOrRate, shot: number, part: number): TimeLaw {
  if (part === 0) return ofTicks(0);
  return recharge.by === "time" ? { law: recharge.time, factor: part / shot } : massLaw(recharge, part);
}

/** An empty chamber is filled to the largest shot, then on until it is full. */
function firstFill(scenario: Scenario): readonly StepSpec[] {
  const { shots, rest, largest } = reserveOf(scenario);
  const station = scenario.stations.find((each) => shotMass(each) === largest)!;
  const part = (mass: number): { readonly laws: readonly TimeLaw[] } => ({
    laws: [partOf(station.recharge, largest, mass)],
  });
  return [
    { name: "fill at first", time: part(largest), gives: [{ place: "full shot" }], counts: { [rechargesCounter]: 1 } },
    ...Array.from({ length: shots }, (_, i): StepSpec => ({
      name: `fill for shot ${i + 2}`,
      time: part(largest),
      gives: [{ place: "full shot" }],
    })),
    { name: "fill to the brim", time: part(rest), next: "hold" },
  ];
}

function valve(scenario: Scenario): ProcessSpec {
  return {
    name: VALVE,
    resource: VALVE,
    steps: [
      {
        name: "shift to neutral",
        needs: [{ place: "valve to be shifted back" }],
        shows: [
          { resource: VALVE, state: "shifting" },
          { resource: RAM, state: "waiting for the valve" },
        ],
        time: fixed(scenario.valve.shift),
        gives: [{ place: "valve" }],
      },
      { name: "neutral", shows: [{ resource: VALVE, state: "neutral" }] },
    ],
  };
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
    ],
    time: { ...fixed(scenario.valve.shift), resource: VALVE },
  };
}

/** The ram moves, so there is room behind it. */
function begin({ name }: StationSpec): StepSpec {
  return { name: "ram moves", gives: [{ place: "room in the chamber" }], counts: { [dropsOf(name)]: 1 } };
}

function drop(station: StationSpec): StepSpec {
  return {
    name: "drop",
    shows: [
      { resource: station.name, state: "parison drop" },
      { resource: VALVE, state: `open to ${station.name}` },
      { resource: RAM, state: "delivering" },
    ],
    time: { laws: [massLaw(station.drop, shotMass(station))] },
    gives: [{ place: "valve to be shifted back" }],
    counts: { [shotsOf(station.name)]: 1 },
  };
}
