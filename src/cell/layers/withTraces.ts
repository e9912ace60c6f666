// Replaces drawn step times by measured ones, which a run takes in their order.
import type { DrawnTime } from "#engine/compiler/stepTable.ts";
import type { CellProcess, CellStep, CellTable } from "#cell/words/cellTable.ts";

/** Seconds of the steps of a resource, in the order in which they happened; undefined where none are known. */
export type Traces = (resource: string, step: string) => readonly number[] | undefined;

const isNothing = ({ distribution }: DrawnTime): boolean => distribution.kind === "fixed" && distribution.value === 0;

export interface TracedStep {
  readonly resource: string;
  readonly step: string;
  readonly isTraced: boolean;
}

/** Clocks, timetables and stops are not steps that a log holds. */
function isTimed({ time, isClock, role }: CellStep, { steps }: CellProcess): boolean {
  if (
    !time ||
    time.distributions.every(isNothing) ||
    isClock === true ||
    time.until !== undefined ||
    time.whileWorking !== undefined
  )
    return false;
  return (
    !/^(?:stop|calendar|change|moldClock|contactClock|idleClock|age)\./u.test(role) && !steps.some(({ stops }) => stops)
  );
}

export function withTraces(table: CellTable, traces: Traces): CellTable {
  const traced = (step: CellStep, process: CellProcess): CellStep => {
    const found = isTimed(step, process) ? traceOf(step, process, traces) : undefined;
    if (found === undefined || !step.time) return step;
    const measured: DrawnTime = {
      distribution: { kind: "empirical", values: found.values },
      trace: JSON.stringify([found.resource, step.name]),
    };
    // A log shows no walk of an operator who is there already.
    const distributions = step.time.distributions.map((drawn) => (isNothing(drawn) ? drawn : measured));
    return { ...step, time: { ...step.time, distributions } };
  };
  const processes = table.processes.map((process) => ({
    ...process,
    steps: process.steps.map((step) => traced(step, process)),
  }));
  return { ...table, processes };
}

/** Every timed step whose time may vary, and whether the traces hold it. */
export function tracedSteps({ processes }: Pick<CellTable, "processes">, traces: Traces): readonly TracedStep[] {
  const steps = processes.flatMap((process) =>
    process.steps
      .filter((step) => isTimed(step, process))
      .map((step) => {
        const resource = step.time?.resource ?? process.resource;
        return { resource, step: step.name, isTraced: traceOf(step, process, traces) !== undefined };
      }),
  );
  return [...new Map(steps.map((each) => [JSON.stringify([each.resource, each.step]), each])).values()];
}

/** By the resource to which the step belongs, else by that of the process, which may show it too. */
function traceOf({ name, time }: CellStep, process: CellProcess, traces: Traces) {
  const owners = [time?.resource ?? process.resource, process.resource];
  for (const resource of owners) {
    const values = traces(resource, name);
    if (values && values.length > 0) return { resource, values };
  }
  return undefined;
}
