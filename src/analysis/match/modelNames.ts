// The names of a log as the model spells them.
import { mostGroups, type StepRecord } from "#analysis/log/logRecord.ts";
import { tracedSteps } from "#cell/layers/withTraces.ts";
import type { CellPlan } from "#cell/layers/planCell.ts";

export interface NamedLog {
  readonly named: (record: StepRecord) => StepRecord;
  /** Stations of the log that the model does not have, each once. */
  readonly unmatched: () => readonly string[];
  /** Names of the log that are to be renamed, but never came. */
  readonly unused: () => readonly string[];
  /** New names that no station, other resource or step of the model has. */
  readonly unknown: readonly string[];
}

/** What a log without a column of stations calls its only one. */
const onlyStation = "line";

/** `renames`: names of the log by the names in the model. Letters may be large or small. */
export function modelNames(
  { scenario, resources, processes }: CellPlan,
  renames: ReadonlyMap<string, string>,
): NamedLog {
  const [alone, ...others] = scenario.stations.map(({ name }) => name);
  const byName = new Map([
    ...(others.length === 0 ? [[onlyStation, alone!] as const] : []),
    ...resources.map(({ name }) => [name.toLowerCase(), name] as const),
  ]);
  const steps = tracedSteps({ processes }, () => undefined).map(({ step }) => step);
  const stepByName = new Map(steps.map((step) => [step.toLowerCase(), step]));
  const renamed = new Map([...renames].map(([from, to]) => [from.toLowerCase(), to]));
  const unmatched = new Set<string>();
  const unused = new Map([...renames].map(([from]) => [from.toLowerCase(), from]));
  const renamedOr = (name: string): string => {
    unused.delete(name.toLowerCase());
    return renamed.get(name.toLowerCase()) ?? name;
  };
  return {
    named: (record) => {
      const station = renamedOr(record.station);
      const known = byName.get(station.toLowerCase());
      if (known === undefined && unmatched.size <= mostGroups) unmatched.add(station);
      const step = stepByName.get(renamedOr(record.step).toLowerCase());
      // The model knows better than the words of a name whether it is a step.
      if (step !== undefined && record.kind !== "wait")
        return { ...record, station: known ?? station, step, kind: "step" };
      return { ...record, station: known ?? station, step: renamedOr(record.step) };
    },
    unmatched: () => [...unmatched],
    unused: () => [...unused.values()],
    unknown: [...renames.values()].filter((to) => !byName.has(to.toLowerCase()) && !stepByName.has(to.toLowerCase())),
  };
}
