// Melt from one accumulator before the valve: the screw goes on filling its chamber while a parison drops, until it is full.
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import type { PlaceSpec, DrawnTime } from "#engine/compiler/stepTable.ts";
import type { AccumulatorHeadSpec, Scenario, StationSpec, TimeOrRate } from "#scenario/scenario.ts";
import type { CellProcess, CellResource, CellStep } from "#cell/words/cellTable.ts";
import { dropsOf, PLASTICATOR, RAM, rechargesCounter, VALVE } from "#cell/words/cycleNames.ts";
import { FREE_VALVE, FULL_SHOT, VALVE_TO_SHIFT_BACK } from "#cell/words/placeNames.ts";
import { stateNames } from "#cell/words/stateNames.ts";
import { named, namedAfter, stepNames } from "#cell/words/stepNames.ts";
import type { MeltDelivery } from "#cell/table/meltDelivery.ts";
import { drop, shiftToPort, stationStates, valveResource } from "#cell/table/selectorValve.ts";
import { shotMass } from "#cell/table/shotMass.ts";
import { fixed, massDistribution, rank, servingRule, waiting, working } from "#cell/words/tableWords.ts";

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
    stationStates,
    parison: (station) => [shiftToPort(scenario, station, RAM), begin(station), drop(station, RAM)],
    closeGives: [],
  };
}

function plasticatorResource({ run }: Scenario): CellResource {
  const [holding, recharging] = [waiting(stateNames.holdingShot), working(stateNames.recharging)];
  const states = run.start === "running" ? [holding, recharging] : [recharging, holding];
  return { name: PLASTICATOR, kind: "screw", states };
}

function ramResource({ run }: Scenario): CellResource {
  const [empty, full] = [waiting(stateNames.awaitingShot), waiting(stateNames.holdingShot)];
  const others = [working(stateNames.valveShifting), working(stateNames.delivering)];
  const states = run.start === "running" ? [full, empty, ...others] : [empty, full, ...others];
  return { name: RAM, kind: "ram", states };
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

const ROOM = "room in the chamber";
const SHOT_FOR_RAM = "shot seen by the ram";
const RAM_AT_REST = "ram at rest";

function places(scenario: Scenario): PlaceSpec[] {
  const { run, valve: spec } = scenario;
  const full = run.start === "running" ? 1 + reserveOf(scenario).shots : 0;
  return [
    { name: FULL_SHOT, tokens: full, rule: servingRule[spec.dispatch], rank: rank.plasticator },
    { name: FREE_VALVE, tokens: 1, rank: rank.valve },
    { name: VALVE_TO_SHIFT_BACK, tokens: 0, rank: rank.station },
    { name: ROOM, tokens: 0, rank: rank.station },
    { name: SHOT_FOR_RAM, tokens: full, rank: rank.plasticator },
    { name: RAM_AT_REST, tokens: 0, rank: rank.valve },
  ];
}

function plasticator(scenario: Scenario): CellProcess {
  const { run } = scenario;
  const recharging = { resource: PLASTICATOR, state: stateNames.recharging };
  const [toShot, beyond] = rechargeDistributions(scenario);
  return {
    name: PLASTICATOR,
    kind: "screw",
    resource: PLASTICATOR,
    begins: stepNames[run.start === "running" ? "screw.recharge" : "screw.firstShot"],
    steps: [
      {
        ...named("screw.recharge"),
        needs: [{ place: ROOM, takes: "cargo" }],
        shows: [recharging],
        time: { distributions: toShot },
        gives: fullShot,
        counts: { [rechargesCounter]: 1 },
      },
      // Both parts of one recharge use the same random number.
      {
        ...named("screw.fillBeyond"),
        time: { distributions: beyond, stream: stepNames["screw.recharge"], again: true },
      },
      {
        ...named("screw.hold"),
        shows: [{ resource: PLASTICATOR, state: stateNames.holdingShot }],
        next: stepNames["screw.recharge"],
      },
      ...(run.start === "running" ? [] : firstFill(scenario)),
    ],
  };
}

/** For the station that is served next, and for the ram to show that it is there. */
const fullShot: NonNullable<CellStep["gives"]> = [{ place: FULL_SHOT }, { place: SHOT_FOR_RAM }];

/** For each station the distribution of what makes the next shot complete, and of what comes after that. */
function rechargeDistributions(scenario: Scenario): readonly [DrawnTime[], DrawnTime[]] {
  const { rest } = reserveOf(scenario);
  const parted = scenario.stations.map((station) => partRecharge(station.recharge, shotMass(station), rest));
  return [parted.map(([first]) => first), parted.map(([, second]) => second)];
}

/** A fixed time is parted in whole ticks, so that both parts together are exactly what the whole was. */
function partRecharge(recharge: TimeOrRate, shot: number, rest: number): readonly [DrawnTime, DrawnTime] {
  const later = Math.min(rest, shot);
  const distribution = recharge.by === "time" ? recharge.time : recharge.rate;
  if (distribution.kind !== "fixed") return [partOf(recharge, shot, shot - later), partOf(recharge, shot, later)];
  const seconds = recharge.by === "time" ? distribution.value : shot / 1e6 / distribution.value;
  const ticks = Math.round(seconds * TICKS_PER_SECOND);
  const beyond = Math.floor((ticks * later) / shot);
  return [ofTicks(ticks - beyond), ofTicks(beyond)];
}

const ofTicks = (ticks: number): DrawnTime => ({
  distribution: { kind: "fixed", value: ticks },
  factor: 1 / TICKS_PER_SECOND,
});

function partOf(recharge: TimeOrRate, shot: number, part: number): DrawnTime {
  if (part === 0) return ofTicks(0);
  return recharge.by === "time"
    ? { distribution: recharge.time, factor: part / shot }
    : massDistribution(recharge, part);
}

/** An empty chamber is filled to the largest shot, then on until it is full. */
function firstFill(scenario: Scenario): readonly CellStep[] {
  const { shots, rest, largest } = reserveOf(scenario);
  const station = scenario.stations.find((each) => shotMass(each) === largest)!;
  const part = (mass: number): { readonly distributions: readonly DrawnTime[] } => ({
    distributions: [partOf(station.recharge, largest, mass)],
  });
  return [
    { ...named("screw.firstShot"), time: part(largest), gives: fullShot, counts: { [rechargesCounter]: 1 } },
    ...Array.from({ length: shots }, (_, i): CellStep => ({
      ...namedAfter("screw.fillShot", i + 2),
      time: part(largest),
      gives: fullShot,
    })),
    { ...named("screw.fillUp"), time: part(rest), next: stepNames["screw.hold"] },
  ];
}

function valve(scenario: Scenario): CellProcess {
  return {
    name: VALVE,
    kind: "valve",
    resource: VALVE,
    steps: [
      {
        ...named("valve.toNeutral"),
        needs: [{ place: VALVE_TO_SHIFT_BACK }],
        shows: [
          { resource: VALVE, state: stateNames.shifting },
          { resource: RAM, state: stateNames.valveShifting },
        ],
        time: fixed(scenario.valve.shift),
        gives: [{ place: FREE_VALVE }, { place: RAM_AT_REST }],
      },
      { ...named("valve.neutral"), shows: [{ resource: VALVE, state: stateNames.neutral }] },
    ],
  };
}

/** Only watches: what the chamber holds while nothing is delivered. */
function ram(): CellProcess {
  return {
    name: RAM,
    kind: "ram",
    resource: RAM,
    steps: [
      {
        ...named("ram.seeShot"),
        needs: [{ place: SHOT_FOR_RAM, meanwhile: stateNames.awaitingShot }],
        shows: [{ resource: RAM, state: stateNames.holdingShot }],
      },
      { ...named("ram.rest"), needs: [{ place: RAM_AT_REST }] },
    ],
  };
}

/** The ram moves, so there is room behind it. */
function begin({ name }: StationSpec): CellStep {
  return { ...named("mold.pushRam"), gives: [{ place: ROOM }], counts: { [dropsOf(name)]: 1 } };
}
