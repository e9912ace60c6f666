// The long tables of a run: every event and every shot, one replication after the other.
import { trialSpan } from "#analysis/replication/trialSpan.ts";
import { waitCause } from "#analysis/study/summarizeStates.ts";
import { eventRecorder, type EventRecord } from "#cell/records/eventRecord.ts";
import { eachShot, type ShotRecord } from "#cell/records/shotRecord.ts";
import { stepNames } from "#cell/words/stepNames.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { number } from "./columns.ts";
import { toCsvPieces } from "./csv.ts";
import type { Cell, ColumnSpec, LongTable, Table } from "./table.ts";
import { eventsSpec, shotsSpec, stepColumn, stepsOfShots } from "./tableSpecs.ts";

export function eventsTable(scenario: Scenario): LongTable {
  const batches = perReplication(scenario, (events, replication) =>
    inBatches(eventRows(scenario, events, replication)),
  );
  return { ...eventsSpec, batches };
}

export function shotsTable(scenario: Scenario): LongTable {
  const steps = stepColumns(scenario);
  const columns = [...shotsSpec.columns.slice(0, 3), ...steps.map(({ column }) => column), ...parisonColumns];
  return {
    ...shotsSpec,
    columns,
    batches: perReplication(scenario, (events, replication) =>
      inBatches(shotRows(eachShot(events, scenario), steps, replication)),
    ),
  };
}

function* shotRows(
  shots: Iterable<ShotRecord>,
  steps: readonly StepColumn[],
  replication: number,
): Generator<readonly Cell[]> {
  for (const { station, shot, starts, hang, sag, timeAtHeat, demoldTemperature } of shots) {
    const begins = steps.map(({ step }) => starts.get(step) ?? null);
    yield [replication, station, shot, ...begins, hang, sag, timeAtHeat, demoldTemperature];
  }
}

/** Replications are run again one by one: all of them would not fit in memory. */
function* perReplication(
  scenario: Scenario,
  batches: (events: Iterable<EventRecord>, replication: number) => Iterable<Table["rows"]>,
): Generator<Table["rows"]> {
  const record = eventRecorder(scenario);
  for (let replication = 1; replication <= scenario.run.replications; replication++) {
    yield* batches(record(replication), replication);
  }
}

/** Rows that are written at once: some milliseconds of work, so that an interrupt need not wait. */
const batchSize = 1000;

function* inBatches(rows: Iterable<readonly Cell[]>): Generator<Table["rows"]> {
  let batch: (readonly Cell[])[] = [];
  for (const row of rows) {
    batch.push(row);
    if (batch.length < batchSize) continue;
    yield batch;
    batch = [];
  }
  yield batch;
}

function* eventRows(
  scenario: Scenario,
  events: Iterable<EventRecord>,
  replication: number,
): Generator<readonly Cell[]> {
  for (const event of events) {
    yield [
      replication,
      event.seconds,
      event.resource,
      event.state,
      event.step,
      waitCause(event.state, event.kind, scenario),
      event.station,
      event.shot,
      event.boundByResource,
      event.boundBySeconds,
      event.operator,
      event.parts,
    ];
  }
}

/** Replication, station and shot come before the steps. */
const parisonColumns = shotsSpec.columns.slice(3 + stepsOfShots.length);

interface StepColumn {
  readonly step: string;
  readonly column: ColumnSpec;
}

/** The steps of every cycle, then those that the user named, in the order of the stations. */
function stepColumns({ stations }: Scenario): readonly StepColumn[] {
  const standard = stepsOfShots.map((role): StepColumn => ({ step: stepNames[role], column: stepColumn(role) }));
  const travel = stations.some((station) => station.travel)
    ? [stepNames["mold.travelIn"], stepNames["mold.cut"], stepNames["mold.travelOut"]]
    : [];
  const names = [...travel, ...new Set(stations.flatMap(({ extra }) => extra.map(({ name }) => name)))];
  const taken = new Set(shotsSpec.columns.map(({ name }) => name));
  return [...standard, ...names.map((step) => ownColumn(step, taken))];
}

/** Column names are plain ASCII; where two steps would share one, the later gets a number. */
function ownColumn(step: string, taken: Set<string>): StepColumn {
  const plain = step
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, "_")
    .replaceAll(/^_+|_+$/g, "");
  const base = plain === "" || /^\d/.test(plain) ? `step_${plain}`.replace(/_$/, "") : plain;
  let name = `${base}_start_s`;
  for (let n = 2; taken.has(name); n++) name = `${base}_${n}_start_s`;
  taken.add(name);
  return { step, column: number(name, `Step ${step} begins`, "s") };
}

const turnsTried = 500;

/** Bytes of both tables, about: those of the beginning of a run, times all that follows. */
export function bytesOfEvents(scenario: Scenario): number {
  const { length, replications } = scenario.run;
  const span = trialSpan(scenario, turnsTried);
  const tried = { ...scenario, run: { ...scenario.run, length: span, replications: 1 } };
  let bytes = 0;
  for (const table of [eventsTable(tried), shotsTable(tried)])
    for (const piece of toCsvPieces(table)) bytes += piece.length;
  return (bytes * length * replications) / span;
}
