// Melt from one accumulator before the valve: the screw goes on filling its chamber while a parison drops, until it is full.
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import type { PlaceSpec, ProcessSpec, ResourceSpec, StepSpec, TimeLaw } from "#engine/compiler/stepTable.ts";
import type { AccumulatorHeadSpec, Scenario, StationSpec, TimeOrRate } from "#scenario/scenario.ts";
import { dropsOf, PLASTICATOR, RAM, rechargesCounter, VALVE } from "#cell/words/cycleNames.ts";
import type { MeltDelivery } from "#cell/table/meltDelivery.ts";
import { drop, shiftToPort, valveResource } from "#cell/table/selectorValve.ts";
import { shotMass } from "#cell/table/shotMass.ts";
import { fixed, massLaw, rank, servingRule, waiting, working } from "#cell/words/tableWords.ts";

/** What a recharge adds after the next shot is complete, to fill the chamber. */
export const BEYOND = "fill beyond the shot";

/**
 * A recharge replaces a shot and may begin when its drop begins; recharges follow one another without a gap. A shift needs the
 * largest shot in the chamber: it is there as soon as no more is missing than the chamber holds beyond it, so that each
 * recharge is cut in two at that point. Where the chamber holds several shots, they are counted in shots of the largest.
 */
export function commonAccumulator(scenario: Scenario): MeltDelivery {
  return {
    resources: [plasticatorResource(scenario), ramResource(scenario), valveResource(scenario)],
    places: places(scenario),
    processes: [plasticator(scenario), valve(scenario), ram()],
    stationStates: () => [
      ...["awaiting melt", "awaiting turn", "awaiting valve"].map(waiting),
      ...["valve shifting to it", "parison drop"].map(working),
    ],
    parison: (station) => [shiftToPort(scenario, station, RAM), begin(station), drop(station, RAM)],
    closeGives: [],
  };
}

function plasticatorResource({ run }: Scenario): ResourceSpec {
  const [holding, recharging] = [waiting("holding a full shot"), working("recharging")];
  return { name: PLASTICATOR, states: run.start === "running" ? [holding, recharging] : [recharging, holding] };
}

function ramResource({ run }: Scenario): ResourceSpec {
  const [empty, full] = [waiting("waiting for melt"), waiting("holding a full shot")];
  const others = [working("valve shifting"), working("delivering")];
  return { name: RAM, states: run.start === "running" ? [full, empty, ...others] : [empty, full, ...others] };
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
    { name: "shot seen by the ram", tokens: full, rank: rank.plasticator },
    { name: "ram at rest", tokens: 0, rank: rank.valve },
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
        gives: fullShot,
        counts: { [rechargesCounter]: 1 },
      },
      // One recharge, told in two parts, has one luck.
      { name: BEYOND, time: { laws: beyond, stream: "recharge", again: true } },
      { name: "hold", shows: [{ resource: PLASTICATOR, state: "holding a full shot" }], next: "recharge" },
      ...(run.start === "running" ? [] : firstFill(scenario)),
    ],
  };
}

/** For whoever is served next, and for the ram to show that it is there. */
const fullShot: NonNullable<StepSpec["gives"]> = [{ place: "full shot" }, { place: "shot seen by the ram" }];

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
    { name: "fill at first", time: part(largest), gives: fullShot, counts: { [rechargesCounter]: 1 } },
    ...Array.from({ length: shots }, (_, i): StepSpec => ({
      name: `fill for shot ${i + 2}`,
      time: part(largest),
      gives: fullShot,
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
          { resource: RAM, state: "valve shifting" },
        ],
        time: fixed(scenario.valve.shift),
        gives: [{ place: "valve" }, { place: "ram at rest" }],
      },
      { name: "neutral", shows: [{ resource: VALVE, state: "neutral" }] },
    ],
  };
}

/** Only watches: what the chamber holds while nothing is delivered. */
function ram(): ProcessSpec {
  return {
    name: RAM,
    resource: RAM,
    steps: [
      {
        name: "see a shot",
        needs: [{ place: "shot seen by the ram", meanwhile: "waiting for melt" }],
        shows: [{ resource: RAM, state: "holding a full shot" }],
      },
      { name: "come to rest", needs: [{ place: "ram at rest" }] },
    ],
  };
}

/** The ram moves, so there is room behind it. */
function begin({ name }: StationSpec): StepSpec {
  return { name: "ram moves", gives: [{ place: "room in the chamber" }], counts: { [dropsOf(name)]: 1 } };
}
