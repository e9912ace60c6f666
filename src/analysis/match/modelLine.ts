// What the model did, in the records that a log of it would give.
import { kindOf, type StepRecord } from "#analysis/log/logRecord.ts";
import { waitCause } from "#analysis/study/summarizeStates.ts";
import type { CellPlan } from "#cell/layers/planCell.ts";
import type { EventRecord } from "#cell/records/eventRecord.ts";
import { plannedEvents } from "#cell/records/plannedEvents.ts";
import { LineLog, type Stretch } from "./lineLog.ts";

export interface ModelRun {
  readonly plan: CellPlan;
  readonly replication: number;
  /** States that begin before this second are left out. */
  readonly from: number;
  readonly until: number;
  /** Cells that are kept of each station and step; all times by themselves where it is left out. */
  readonly kept?: number;
  /** Asked with each record: the run ends where it says so. */
  readonly isEnough?: (record: StepRecord) => boolean;
}

export function modelLine(run: ModelRun): Stretch | undefined {
  const { plan, replication, from, until, kept, isEnough = () => false } = run;
  const line = new LineLog(kept);
  const open = new Map<string, EventRecord>();
  for (const event of plannedEvents(plan, replication, until)) {
    const before = open.get(event.resource);
    open.set(event.resource, event);
    if (!before || event.seconds <= before.seconds || before.seconds < from) continue;
    const record = recordOf(before, event.seconds, plan);
    line.take(record);
    if (isEnough(record)) break;
  }
  return line.stretches()[0];
}

/** As a reader of the log names it: a wait and a stop by the state, a step by its name. */
function recordOf(
  { seconds, resource, state, kind, step }: EventRecord,
  until: number,
  { scenario }: CellPlan,
): StepRecord {
  const isWait = waitCause(state, kind, scenario) !== null;
  const isNamedByState = isWait || kindOf(state) === "stop";
  const name = isNamedByState ? state : (step ?? state);
  return {
    station: resource,
    step: name,
    kind: isWait ? "wait" : kindOf(state),
    seconds: until - seconds,
    start: seconds,
    line: 0,
    run: "",
  };
}
