// Shows the cause of a station's wait: what keeps the screw or the valve from work, instead of the wait for them.
import type { CauseSpec } from "#engine/compiler/stepTable.ts";
import type { CellProcess, CellResource, CellStep, CellTable } from "#cell/words/cellTable.ts";
import { PLASTICATOR, VALVE } from "#cell/words/cycleNames.ts";
import { stateNames } from "#cell/words/stateNames.ts";
import { settingUp, waiting } from "#cell/words/tableWords.ts";

const { heating, purging, stopped, awaitingMelt, awaitingTurn, awaitingValve } = stateNames;

/** A change of the screw is also one of every station. */
const screwCauses: readonly CauseSpec[] = [
  { resource: PLASTICATOR, state: heating, shows: stateNames.awaitingHeatUp },
  { resource: PLASTICATOR, state: purging, shows: stateNames.awaitingPurge },
  { resource: PLASTICATOR, state: stopped, shows: stateNames.screwStopped },
];
const valveCauses: readonly CauseSpec[] = [{ resource: VALVE, state: stopped, shows: stateNames.valveStopped }];

/** By the wait; the first cause that holds is shown. */
const causes: ReadonlyMap<string, readonly CauseSpec[]> = new Map([
  [awaitingMelt, [...screwCauses, ...valveCauses]],
  [awaitingTurn, [...screwCauses, ...valveCauses]],
  [awaitingValve, valveCauses],
]);

const shownStates = [
  ...[stateNames.awaitingHeatUp, stateNames.awaitingPurge].map(settingUp),
  ...[stateNames.screwStopped, stateNames.valveStopped].map(waiting),
];

/** Returns the same table where nothing keeps screw and valve from their work. */
export function withCauses(table: CellTable): CellTable {
  const known = new Set(table.resources.flatMap(({ name, states }) => states.map((state) => keyOf(name, state.name))));
  const isKnown = ({ resource, state }: CauseSpec): boolean => known.has(keyOf(resource, state));
  const causesOf = (meanwhile = ""): readonly CauseSpec[] => (causes.get(meanwhile) ?? []).filter(isKnown);
  const shows = new Set([...causes.keys()].flatMap(causesOf).map((cause) => cause.shows));
  if (shows.size === 0) return table;
  const added = shownStates.filter(({ name }) => shows.has(name));
  const explained = (step: CellStep): CellStep =>
    step.needs ? { ...step, needs: step.needs.map((need) => ({ ...need, causes: causesOf(need.meanwhile) })) } : step;
  return {
    ...table,
    resources: table.resources.map((resource): CellResource =>
      resource.kind === "station" ? { ...resource, states: [...resource.states, ...added] } : resource,
    ),
    processes: table.processes.map((process): CellProcess => ({ ...process, steps: process.steps.map(explained) })),
  };
}

const keyOf = (resource: string, state: string): string => JSON.stringify([resource, state]);
