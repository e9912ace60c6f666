// Adds walks to a cycle table: an operator walks to each task, unless their last task was at the same place.
import type { PlaceSpec, ShowSpec } from "#engine/compiler/stepTable.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { isRelease, operatorShow, stateOfTask } from "#cell/table/crew.ts";
import type { CellProcess, CellResource, CellStep, CellTable } from "#cell/words/cellTable.ts";
import { OPERATORS } from "#cell/words/placeNames.ts";
import { stateNames } from "#cell/words/stateNames.ts";
import { namedAfter } from "#cell/words/stepNames.ts";
import { rank, waiting } from "#cell/words/tableWords.ts";

/** Returns the same table where walks take no time. */
export function withWalks(table: CellTable, scenario: Scenario): CellTable {
  if (scenario.walk === undefined) return table;
  const calling = table.processes.filter(({ steps }) => steps.some(({ task }) => task !== undefined));
  // There is no walk between places of one server.
  const groups = new Map(table.resources.map(({ name, group = name }) => [name, group]));
  const siteOf = ({ resource }: CellProcess): string => groups.get(resource)!;
  // The stations come first, so that the numbers of their sites equal the numbers that the valve uses.
  const stations = scenario.stations.map(({ name }) => name);
  const sites = [...new Set([...stations, ...calling.map(siteOf)])];
  return {
    ...table,
    resources: table.resources.map(awaitingWalks),
    places: [
      ...table.places,
      ...whereaboutsPlaces(scenario, sites),
      ...calling.map((process) => ({ name: ownNumber(process), tokens: 1, cargo: sites.indexOf(siteOf(process)) })),
    ],
    processes: table.processes.map((process) =>
      calling.includes(process) ? walking(process, { scenario, sites, here: sites.indexOf(siteOf(process)) }) : process,
    ),
  };
}

/** What waits for an operator may wait for one who is walking to it. */
function awaitingWalks(resource: CellResource): CellResource {
  const awaitsOperator = resource.states.some(({ name }) => name === stateNames.noOperatorFree);
  return awaitsOperator
    ? { ...resource, states: [...resource.states, waiting(stateNames.operatorOnTheWay)] }
    : resource;
}

const whereabouts = (operator: number): string => `whereabouts ${operator + 1}`;

/** Each operator has a token that carries the number of the site of their last task. At the start there is no such site. */
function whereaboutsPlaces({ operators }: Scenario, sites: readonly string[]): readonly PlaceSpec[] {
  return Array.from({ length: operators }, (_, operator) => ({
    name: whereabouts(operator),
    tokens: 1,
    cargo: sites.length,
    rank: rank.crew,
  }));
}

const ownNumber = ({ name }: CellProcess): string => `number of ${name}`;

function walking(process: CellProcess, walk: Walk): CellProcess {
  let isTaken = false;
  const steps = process.steps.flatMap((step): readonly CellStep[] => {
    if (step.task !== undefined) {
      isTaken = true;
      return walkingTo(step, process, walk);
    }
    if (!isTaken || !isRelease(step)) return [step];
    isTaken = false;
    return [leaving(step, process)];
  });
  return { ...process, steps };
}

interface Walk {
  readonly scenario: Scenario;
  readonly sites: readonly string[];
  readonly here: number;
}

/**
 * The number of the site of the last task decides whether there is a walk. It uses the register of the process's own number. The
 * process takes its own number back before it works, because a station's valve uses it.
 */
function walkingTo(step: CellStep, process: CellProcess, { scenario, sites, here }: Walk): readonly CellStep[] {
  const { needs = [], priority, patience, shows = [], ...work } = step;
  const task = step.task!;
  const from = Array.from({ length: sites.length + 1 }, (_, number) => number);
  const meanwhile = needs.find(({ place }) => place === OPERATORS)?.meanwhile;
  const waits = (state: string): ShowSpec => ({
    resource: process.resource,
    state: from.map((number) => (number === here ? state : stateNames.operatorOnTheWay)),
  });
  const nothing = { kind: "fixed", value: 0 } as const;
  const shown = from.map((number) => (number === here ? stateOfTask[task] : stateNames.walking));
  return [
    {
      ...namedAfter("crew.call", step.name),
      task,
      needs,
      ...(priority === undefined ? {} : { priority }),
      ...(patience === undefined ? {} : { patience }),
      ...(step.stoppedBy === undefined ? {} : { stoppedBy: step.stoppedBy }),
    },
    {
      ...namedAfter("crew.walk", step.name),
      task,
      needs: [{ place: whereabouts(0), by: "helper", takes: "cargo" }],
      shows: [...(meanwhile === undefined ? [] : [waits(meanwhile)]), operatorShow(shown)],
      time: { distributions: from.map((number) => ({ distribution: number === here ? nothing : scenario.walk! })) },
      stoppedBy: [],
    },
    // A stop must not hold the task after the walk: the operator would never be free to end that stop.
    { ...work, shows, stoppedBy: [] },
  ];
}

function leaving(step: CellStep, process: CellProcess): CellStep {
  const place = ownNumber(process);
  return {
    ...step,
    needs: [...(step.needs ?? []), { place, takes: "cargo" }],
    gives: [{ place }, { place: whereabouts(0), by: "helper" }, ...(step.gives ?? [])],
    stoppedBy: [],
  };
}
