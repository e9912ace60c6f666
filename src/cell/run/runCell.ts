// Runs one replication of a cell and returns its record as plain rows.
import type { EventLog } from "#engine/run/eventLog.ts";
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import { Simulation } from "#engine/run/simulation.ts";
import type { Scenario, StationSpec } from "#scenario/scenario.ts";
import { extrusionRate } from "#cell/delivery/continuousExtrusion.ts";
import type { CellPlan } from "#cell/layers/planCell.ts";
import type { CellRecord, ChainShare, StateTime, StationRecord, StopRecord } from "#cell/records/cellRecord.ts";
import {
  goodCounter,
  lostDropsOf,
  lostShotsOf,
  partsOf,
  purgedCounter,
  refusedOf,
  rejectsOf,
  shotsOf,
} from "#cell/words/cycleNames.ts";
import { stateNames } from "#cell/words/stateNames.ts";
import { CycleCounter } from "./cycleCounter.ts";
import { QuarterHours } from "./quarterHours.ts";
import { ParisonWatch } from "./parisonWatch.ts";
import { rejectReasons } from "#cell/layers/withQuality.ts";
import { elementTimes } from "./elementTimes.ts";
import { reasonsOf } from "#cell/words/takeawayWords.ts";
import { takeawayGroups } from "#scenario/resolving/takeawayGroups.ts";
import { stopExposures } from "./stopExposures.ts";
import { settledWarmup } from "./settledWarmup.ts";
import { shotMasses } from "#cell/table/shotMass.ts";

export interface RunOptions {
  readonly replication: number;
  /** Seconds not counted at the beginning; the scenario's if not given. */
  readonly warmup?: number;
  readonly log?: EventLog;
  /** Keeps the tick of every shot; true if not given. A year has five million. */
  readonly keepsShots?: boolean;
  /** Counts the times from shot to shot of each station; false if not given. */
  readonly countsCycles?: boolean;
  /** Called at each part that passes the last server; only with a takeaway. */
  readonly partReader?: (tick: number) => void;
  /** Keeps a sample of how long parisons drop, hang and are hot; false if not given. */
  readonly watchesParisons?: boolean;
  /** Reads a run on a calendar at every quarter of an hour; the days of all and the first quarters if not given. */
  readonly quarters?: "first" | "days" | "none";
  /** Returns the function that runs the simulation on to a tick. It may stop earlier; the observation then ends there. */
  readonly runOn?: (simulation: Simulation) => (tick: number) => void;
  /** Gets on the way the share of the run that is done. */
  readonly report?: (share: number) => void;
  /** Follows the critical path; true if not given. */
  readonly keepsChain?: boolean;
}

/** The same scenario, seed and replication always give the same record. */
export function runCell(plan: CellPlan, options: RunOptions): CellRecord {
  const { scenario, program } = plan;
  const warmup = options.warmup ?? settledWarmup(scenario);
  const from = Math.round(warmup * TICKS_PER_SECOND);
  const latest = Math.round(scenario.run.length * TICKS_PER_SECOND);
  const keepsShots = options.keepsShots ?? true;
  const watch = options.watchesParisons === true ? ParisonWatch.of(plan) : undefined;
  const shotTicks: readonly number[][] = scenario.stations.map(() => []);
  const shotReaders = plan.marked.map(
    (counter, k) => [counter, (tick: number) => void shotTicks[k]!.push(tick)] as const,
  );
  const cycles = options.countsCycles === true ? plan.marked.map((counter) => new CycleCounter(counter)) : [];
  const simulation = new Simulation(program, {
    seed: scenario.run.seed,
    replication: options.replication,
    isActive: plan.isActive,
    classOf: plan.elementClass,
    ...(options.log ? { log: options.log } : {}),
    readers: [
      ...(keepsShots ? shotReaders : []),
      ...cycles.map(({ reader }) => reader),
      ...(options.partReader ? [[goodCounter, options.partReader] as const] : []),
      ...(watch?.readers ?? []),
    ],
  });
  const runOn = options.runOn?.(simulation) ?? reporting(simulation, latest, options.report);
  if (from > 0) {
    runOn(from);
    simulation.restartObservation();
    for (const ticks of shotTicks) ticks.length = 0;
    for (const each of cycles) each.restart();
  }
  watch?.restartObservation();
  const quarters = options.quarters === "none" ? undefined : QuarterHours.of(plan, options.quarters !== "days");
  const readOn = quarters ? quarters.readingOn(simulation, { from, until: latest, runOn }) : runOn;
  const elements = elementTimes(plan, simulation, { from, until: latest, runOn: readOn });
  const until = options.runOn ? Math.min(latest, simulation.now) : latest;
  const counted = simulation.counts;
  const counts = new Map(program.counters.map((name, i) => [name, counted[i]!]));
  const stations = scenario.stations.map((station, k) => ({
    name: station.name,
    shots: counts.get(shotsOf(station.name)) ?? 0,
    parts: counts.get(partsOf(station.name)) ?? 0,
    ...weighed(station),
    rejects: rejectReasons.flatMap((reason) => {
      const found = counts.get(rejectsOf(station.name, reason));
      return found === undefined ? [] : [{ reason, parts: found }];
    }),
    lostDrops: counts.get(lostDropsOf(station.name)) ?? 0,
    lostShots: counts.get(lostShotsOf(station.name)) ?? 0,
    ...riseOf(simulation, shotsOf(station.name)),
    shotTicks: shotTicks[k]!,
    ...(cycles[k] ? { cycles: cycles[k].counted() } : {}),
  }));
  const stateTimes = stateTimesOf(plan, simulation);
  const longestActive = simulation.longestActive().flatMap((times, i) => {
    const { name, kind } = plan.resources[i]!;
    return kind === "shift" ? [] : [{ resource: name, ...times }];
  });
  const standstill = simulation.standstill;
  return {
    replication: options.replication,
    fromTick: from,
    untilTick: until,
    ...offWithin(scenario, from, until),
    stations,
    stateTimes,
    elementTimes: elements,
    longestActive,
    chain: options.keepsChain === false ? [] : chainShares(plan, simulation, stations),
    stops: stopRecords(plan, simulation),
    stopExposures: stopExposures(scenario, simulation.stops, { from, until, stations, stateTimes }),
    purgedMilligrams: counts.get(purgedCounter) ?? 0,
    ...excess(scenario, stateTimes),
    ...takeawayOf(scenario, counts),
    ...(scenario.regrindLimit === undefined ? {} : { regrindLimit: scenario.regrindLimit }),
    parisons: watch?.records() ?? [],
    ...(quarters ? { days: quarters.days, quarters: quarters.records } : {}),
    ...(standstill ? { standstill } : {}),
  };
}

/** Parts of a run after each of which it reports: a long one lasts minutes. */
const reportedParts = 500;

/** What runs on to a tick; that it pauses on the way changes nothing. */
function reporting(simulation: Simulation, latest: number, report?: (share: number) => void): (tick: number) => void {
  if (!report) return (tick) => simulation.runUntil(tick);
  const part = Math.max(1, Math.ceil(latest / reportedParts));
  let at = 0;
  return (tick) => {
    for (; at + part < tick; at += part) {
      simulation.runUntil(at + part);
      report((at + part) / latest);
    }
    simulation.runUntil(tick);
  };
}

function offWithin({ calendar }: Scenario, from: number, until: number): Pick<CellRecord, "off"> {
  if (!calendar) return {};
  const within = (seconds: number): number => Math.min(until, Math.max(from, Math.round(seconds * TICKS_PER_SECOND)));
  const off = calendar.off.map((absence) => ({ fromTick: within(absence.from), untilTick: within(absence.until) }));
  return { off: off.filter(({ fromTick, untilTick }) => untilTick > fromTick) };
}

function weighed(station: StationSpec): Pick<StationRecord, "masses"> {
  const masses = shotMasses(station);
  return masses ? { masses } : {};
}

function excess(scenario: Scenario, stateTimes: readonly StateTime[]): { readonly excessMilligrams?: number } {
  const rate = scenario.delivery.kind === "continuous" ? extrusionRate(scenario) : undefined;
  if (rate === undefined) return {};
  const tail = stateTimes.find(({ state }) => state === stateNames.extrudingToRegrind);
  return { excessMilligrams: Math.round((tail?.ticks ?? 0) * rate) };
}

function takeawayOf(
  { takeaway, stations }: Scenario,
  counts: ReadonlyMap<string, number>,
): Pick<CellRecord, "takeaway"> {
  if (!takeaway) return {};
  const refused = [...new Set(takeaway.flatMap(reasonsOf))].map((reason) => ({
    reason,
    parts: counts.get(refusedOf(reason)) ?? 0,
  }));
  const servers = takeawayGroups({ takeaway, stations }).map(({ name, places }) => ({ name, places }));
  return { takeaway: { good: counts.get(goodCounter) ?? 0, refused, servers } };
}

function stopRecords({ scenario }: CellPlan, { stops }: Simulation): readonly StopRecord[] {
  return stops.records.map(({ stop, begin, repair, end }) => {
    const { resource, name } = scenario.stops![stop]!;
    return { resource, stop: name, fromTick: begin, repairTick: repair, untilTick: end };
  });
}

function riseOf(
  { program, firstRise, lastRise }: Simulation,
  name: string,
): { readonly firstShotTick: number; readonly lastShotTick: number } {
  const counter = program.counters.indexOf(name);
  return { firstShotTick: firstRise[counter]!, lastShotTick: lastRise[counter]! };
}

function stateTimesOf({ program, resources, isActive }: CellPlan, { stateTicks }: Simulation): StateTime[] {
  return program.states.flatMap(({ resource, name, kind }, i) => {
    const owner = resources[resource]!;
    const time = { resource: owner.name, state: name, kind, isActive: isActive[i] === 1, ticks: stateTicks[i]! };
    return owner.kind === "shift" ? [] : [time];
  });
}

/** One chain a station, back from the end of the run, weighted by the station's shots. */
function chainShares(
  plan: CellPlan,
  simulation: Simulation,
  stations: readonly Pick<StationRecord, "shots">[],
): ChainShare[] {
  const shots = stations.map((station) => station.shots);
  const total = shots.reduce((sum, each) => sum + each, 0);
  const weights = shots.map((each) => (total === 0 ? 1 / shots.length : each / total));
  const chains = simulation.chainsOf(plan.stationProcess);
  const weighted = (ticks: readonly number[]): number => ticks.reduce((sum, each, k) => sum + each * weights[k]!, 0);
  return plan.activities.map((activity, i) => {
    const ticksByStation = chains.map((chain) => chain.ticks[i]!);
    return {
      ...activity,
      ticksByStation,
      ticks: weighted(ticksByStation),
      tiedTicks: weighted(chains.map((chain) => chain.tied[i]!)),
    };
  });
}
