// Adds the walks of the operators to a cycle table: an operator who is called walks, unless the last task was at the same place.
import type { PlaceSpec, ShowSpec } from "#engine/compiler/stepTable.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { isRelease, operatorShow, stateOfTask } from "#cell/table/crew.ts";
import type { CellProcess, CellStep, CellTable } from "#cell/words/cellTable.ts";
import { OPERATORS } from "#cell/words/placeNames.ts";
import { stateNames } from "#cell/words/stateNames.ts";
import { namedAfter } from "#cell/words/stepNames.ts";
import { rank } from "#cell/words/tableWords.ts";

/** The table itself where walks take no time. */
export function withWalks(table: CellTable, scenario: Scenario): CellTable {
  if (scenario.walk === undefined) return table;
  const calling = table.processes.filter(({ steps }) => steps.some(({ task }) => task !== undefined));
  // Places of one server stand side by side.
  const groups = new Map(table.resources.map(({ name, group = name }) => [name, group]));
  const siteOf = ({ resource }: CellProcess): string => groups.get(resource)!;
  // The stations come first, each with the number that its valve goes by.
  const stations = scenario.stations.map(({ name }) => name);
  const sites = [...new Set([...stations, ...calling.map(siteOf)])];
  return {
    ...table,
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

const whereabouts = (operator: number): string => `whereabouts ${operator + 1}`;

/** Each operator's token of whereabouts carries the number of the site of the last task; at the beginning there is none. */
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
 * The number of the site that the operator comes from decides whether there is a walk. It stands where the process keeps a number of its
 * own, which it takes back before it works: a station's valve goes by it.
 */
function walkingTo(step: CellStep, process: CellProcess, { scenario, sites, here }: Walk): readonly CellStep[] {
  const { needs = [], priority, patience, shows = [], ...work } = step;
  const task = step.task!;
  const from = Array.from({ length: sites.length + 1 }, (_, number) => number);
  const meanwhile = needs.find(({ place }) => place === OPERATORS)?.meanwhile;
  const waits: readonly ShowSpec[] = meanwhile === undefined ? [] : [{ resource: process.resource, state: meanwhile }];
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
      needs: [{ place: whereabouts(0), by: "hand", takes: "cargo" }],
      shows: [...waits, operatorShow(shown)],
      time: { distributions: from.map((number) => ({ distribution: number === here ? nothing : scenario.walk! })) },
      stoppedBy: [],
    },
    // Held back by a stop after the walk, the operator would never be free to end that stop.
    { ...work, shows, stoppedBy: [] },
  ];
}

function leaving(step: CellStep, process: CellProcess): CellStep {
  const place = ownNumber(process);
  return {
    ...step,
    needs: [...(step.needs ?? []), { place, takes: "cargo" }],
    gives: [{ place }, { place: whereabouts(0), by: "hand" }, ...(step.gives ?? [])],
    stoppedBy: [],
  };
}
