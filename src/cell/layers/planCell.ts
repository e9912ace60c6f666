// The plan of a cell: its cycle table compiled once, ready for any number of replications.
import { lawMean } from "#engine/distributions/law.ts";
import { compileTable, type Program } from "#engine/compiler/program.ts";
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import { invariant } from "#foundation/invariant.ts";
import type { StepTable } from "#engine/compiler/stepTable.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { repairBeginsOf, SHIFT, shotsOf, stopBeginsOf, stopEndsOf } from "#cell/words/cycleNames.ts";
import { elementOf, elementRank } from "#cell/words/elementWords.ts";
import { partsBefore } from "./age.ts";
import { isActiveState } from "#cell/words/isActiveState.ts";
import { cycleTable } from "#cell/delivery/cycleTable.ts";
import { withCalendar } from "./withCalendar.ts";
import { withQuality } from "./withQuality.ts";
import { withTakeaway } from "./withTakeaway.ts";
import { takeawayGroups } from "#scenario/resolving/takeawayGroups.ts";
import { withWalks } from "./withWalks.ts";
import { withStops } from "./withStops.ts";

export interface CellPlan {
  readonly scenario: Scenario;
  readonly program: Program;
  /** Process number of each station, in the order of the scenario's stations. */
  readonly stationProcess: readonly number[];
  /** By state of the program: 1 where its resource counts as at work. */
  readonly isActive: Uint8Array;
  /** By state: rank of the time element that it counts as. */
  readonly elementClass: Uint8Array;
  /** Counters whose every rise is kept with its time: shots, which are many, and stops, which are few. */
  readonly marked: readonly string[];
  readonly stopMarks: readonly string[];
}

/** The cycle, then what judges parts, what takes them away, what may stop, and who rests when, each on top of the one before. */
function allOf(scenario: Scenario): StepTable {
  const judged = withQuality(cycleTable(scenario), scenario);
  const disturbed = withStops(withTakeaway(judged, scenario), scenario);
  return withCalendar(withWalks(disturbed, scenario), scenario);
}

/** All draws of one step of one resource multiplied by a factor: what a faster or slower step would do. */
export interface StepScale {
  readonly resource: string;
  readonly step: string;
  readonly factor: number;
}

export function planCell(scenario: Scenario, scale?: StepScale): CellPlan {
  const isOpen = scenario.stations.some((station) => station.estimates !== undefined);
  invariant(!isOpen, "estimated times are settled before a cell is planned", { scenario: scenario.name });
  const table = allOf(scenario);
  const program = compileTable(scale ? scaleStep(table, scale) : table);
  const stationProcess = scenario.stations.map((station) =>
    table.processes.findIndex((process) => process.name === station.name),
  );
  // Time on shift is nobody's work.
  const isShift = ({ resource }: Program["states"][number]): boolean => table.resources[resource]!.name === SHIFT;
  const isActive = Uint8Array.from(program.states, (state) =>
    !isShift(state) && isActiveState(state.name, state.kind) ? 1 : 0,
  );
  return {
    scenario,
    program,
    stationProcess,
    isActive,
    elementClass: Uint8Array.from(program.states, (state) =>
      isShift(state) ? elementRank.length : elementRank.indexOf(elementOf(state.name, state.kind)),
    ),
    marked: scenario.stations.map((station) => shotsOf(station.name)),
    stopMarks: (scenario.stops ?? []).flatMap(({ resource, name }) => [
      stopBeginsOf(resource, name),
      repairBeginsOf(resource, name),
      stopEndsOf(resource, name),
    ]),
  };
}

/**
 * Ticks of one turn of screw, valve and all stations if every step waited for the one before it, at mean times: a first guess of
 * how long a cell needs for one shot of each station. Of a step with several laws the first counts.
 */
export function slowestTurn({ program, scenario }: CellPlan): number {
  // What comes by a clock of its own, such as a stop, is no part of a turn.
  const apart = new Set(program.rows.filter((row) => row.stops !== -1 || row.isClock).map((row) => row.process));
  const groups = takeawayGroups(scenario);
  const servers = new Set(groups.flatMap((group) => [group.name, partsBefore(group)]));
  const isServed = (row: Program["rows"][number]): boolean =>
    servers.has(program.activities[row.activity]?.resource ?? "");
  const turning = program.rows.filter((row) => !apart.has(row.process) && !isServed(row));
  return turning.reduce((sum, row) => sum + (row.draw?.samplers[0]?.meanTicks ?? 0), 0) + slowestServer(scenario);
}

/** Ticks that the slowest server needs for one shot of each station whose parts it takes; 0 where nothing comes after the mold. */
function slowestServer(scenario: Scenario): number {
  const ticks = takeawayGroups(scenario).map(({ server, station }) => {
    const stations = scenario.stations.filter(({ name }) => station === null || name === station);
    const parts = stations.reduce((sum, { cavities }) => sum + cavities, 0);
    return (parts * lawMean(server.time) * TICKS_PER_SECOND) / server.places;
  });
  return Math.max(0, ...ticks);
}

/** The draws stay the same numbers in the same order, so that the effect of the factor alone is seen. */
function scaleStep(table: StepTable, scale: StepScale): StepTable {
  const processes = table.processes.map((process) => ({
    ...process,
    steps: process.steps.map((step) => {
      const isMeant =
        step.time && (step.time.resource ?? process.resource) === scale.resource && step.name === scale.step;
      if (!isMeant) return step;
      const laws = step.time.laws.map((law) => ({ ...law, factor: (law.factor ?? 1) * scale.factor }));
      return { ...step, time: { ...step.time, laws } };
    }),
  }));
  return { ...table, processes };
}
