// The plan of a cell: its cycle table compiled once, ready for any number of replications.
import { distributionMean } from "#engine/distributions/moments.ts";
import type { Activity } from "#engine/compiler/names.ts";
import { compileTable, type Program } from "#engine/compiler/program.ts";
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import { invariant } from "#foundation/invariant.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { CellProcess, CellResource, CellStep, CellTable } from "#cell/words/cellTable.ts";
import { shotsOf } from "#cell/words/cycleNames.ts";
import { elementOf, elementRank } from "#cell/words/elementWords.ts";
import { isActiveState } from "#cell/words/isActiveState.ts";
import { cycleTable } from "#cell/delivery/cycleTable.ts";
import { longerTime } from "./longerTime.ts";
import { withCalendar } from "./withCalendar.ts";
import { withCauses } from "./withCauses.ts";
import { withContact } from "./withContact.ts";
import { withQuality } from "./withQuality.ts";
import { withTraces, type Traces } from "./withTraces.ts";
import { withTakeaway } from "./withTakeaway.ts";
import { takeawayGroups } from "#scenario/resolving/takeawayGroups.ts";
import { withWalks } from "./withWalks.ts";
import { withStops } from "./withStops.ts";

/** An activity of the program with the role and the task of its step. A wait that ends by lost patience has neither. */
interface PlannedActivity extends Activity, Partial<Pick<CellStep, "role" | "task">> {}

export interface CellPlan {
  readonly scenario: Scenario;
  readonly program: Program;
  readonly resources: readonly CellResource[];
  readonly processes: readonly CellProcess[];
  /** By row of the program. */
  readonly steps: readonly CellStep[];
  readonly activities: readonly PlannedActivity[];
  /** Process number of each station, in the order of the scenario's stations. */
  readonly stationProcess: readonly number[];
  /** By state of the program: 1 where its resource counts as active. */
  readonly isActive: Uint8Array;
  /** By state: rank of its time element. */
  readonly elementClass: Uint8Array;
  /** The counter of each station's shots. */
  readonly marked: readonly string[];
}

/** The layers in order: cycle, contact, quality, takeaway, stops, walks, calendar, causes of waits. */
function allOf(scenario: Scenario): CellTable {
  const judged = withQuality(withContact(cycleTable(scenario), scenario), scenario);
  const disturbed = withStops(withTakeaway(judged, scenario), scenario);
  return withCauses(withCalendar(withWalks(disturbed, scenario), scenario));
}

/** Multiplies all draws of a step by a factor, to see the effect of a faster or slower step. Identical resources share the step. */
export interface StepScale {
  readonly steps: readonly { readonly resource: string; readonly step: string }[];
  readonly factor: number;
  /** Seconds that every draw becomes longer besides. */
  readonly longerBy?: number;
}

/** With traces, steps take the times of a log instead of draws. */
export function planCell(scenario: Scenario, scale?: StepScale, traces?: Traces): CellPlan {
  const isOpen = scenario.stations.some((station) => station.estimates !== undefined);
  invariant(!isOpen, "estimated times are settled before a cell is planned", { scenario: scenario.name });
  const whole = allOf(scenario);
  const scaled = scale ? scaleStep(whole, scale) : whole;
  const table = traces ? withTraces(scaled, traces) : scaled;
  const program = compileTable(table);
  const stationProcess = scenario.stations.map(({ name }) =>
    table.processes.findIndex(({ kind, station }) => kind === "station" && station === name),
  );
  // Time on shift does not count as work.
  const kindOf = ({ resource }: Program["states"][number]): CellResource["kind"] => table.resources[resource]!.kind;
  const isActive = Uint8Array.from(program.states, (state) =>
    kindOf(state) !== "shift" && isActiveState(state.name, state.kind, kindOf(state)) ? 1 : 0,
  );
  return {
    scenario,
    program,
    resources: table.resources,
    processes: table.processes,
    steps: table.processes.flatMap(({ steps }) => steps),
    activities: plannedActivities(program, table),
    stationProcess,
    isActive,
    elementClass: Uint8Array.from(program.states, (state) =>
      kindOf(state) === "shift" ? elementRank.length : elementRank.indexOf(elementOf(state.name, state.kind)),
    ),
    marked: scenario.stations.map((station) => shotsOf(station.name)),
  };
}

function plannedActivities(program: Program, { processes }: CellTable): readonly PlannedActivity[] {
  const planned = new Map<string, Pick<CellStep, "role" | "task">>();
  const keyOf = ({ resource, step, process }: Activity): string => JSON.stringify([resource, step, process]);
  const plan = (activity: number, step: Pick<CellStep, "role" | "task">): void => {
    if (activity !== -1) planned.set(keyOf(program.activities[activity]!), step);
  };
  processes
    .flatMap(({ steps }) => steps)
    .forEach(({ role, task }, row) => plan(program.rows[row]!.activity, task ? { role, task } : { role }));
  program.stoppedActivity.forEach((activity) => plan(activity, { role: "stop.stand" }));
  return program.activities.map((activity) => ({ ...activity, ...planned.get(keyOf(activity)) }));
}

/**
 * Ticks of one turn of screw, valve and all stations at mean times, if all steps ran one after another. It is a first estimate of
 * the time for one shot of each station. Of a step with several distributions the first counts.
 */
export function slowestTurn({ program, processes, scenario }: CellPlan): number {
  // A process with its own clock, such as a stop, is not part of a turn.
  const apart = new Set(program.rows.filter((row) => row.stops !== -1 || row.isClock).map((row) => row.process));
  const isServed = ({ kind }: CellProcess): boolean => kind === "server" || kind === "age clock";
  const turning = program.rows.filter((row) => !apart.has(row.process) && !isServed(processes[row.process]!));
  return turning.reduce((sum, row) => sum + (row.draw?.samplers[0]?.meanTicks ?? 0), 0) + slowestServer(scenario);
}

/** Ticks that the slowest server needs for one shot of each station that it serves; 0 without takeaway. */
function slowestServer(scenario: Scenario): number {
  const ticks = takeawayGroups(scenario).map(({ server, station }) => {
    const stations = scenario.stations.filter(({ name }) => station === null || name === station);
    const parts = stations.reduce((sum, { cavities }) => sum + cavities, 0);
    return (parts * distributionMean(server.time) * TICKS_PER_SECOND) / server.places;
  });
  return Math.max(0, ...ticks);
}

/** The random numbers and their order stay the same, so that only the change of the step has an effect. */
function scaleStep(table: CellTable, scale: StepScale): CellTable {
  const processes = table.processes.map((process) => ({
    ...process,
    steps: process.steps.map((step): CellStep => {
      const owner = step.time?.resource ?? process.resource;
      const isMeant = scale.steps.some((each) => each.resource === owner && each.step === step.name);
      if (!isMeant || !step.time) return step;
      const distributions = step.time.distributions.map((time) =>
        longerTime({ ...time, factor: (time.factor ?? 1) * scale.factor }, scale.longerBy ?? 0),
      );
      return { ...step, time: { ...step.time, distributions } };
    }),
  }));
  return { ...table, processes };
}
