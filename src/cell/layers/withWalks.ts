// Adds the ways of the operators to a cycle table: whoever is called walks, unless the last task was at the same place.
import type { PlaceSpec, ProcessSpec, ShowSpec, StepSpec, StepTable } from "#engine/compiler/stepTable.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { isCallOfHand, operatorShow, stateOf } from "#cell/table/crew.ts";
import { operatorNames } from "#cell/words/cycleNames.ts";
import { rank } from "#cell/words/tableWords.ts";
import { walkTo } from "#cell/words/takeawayWords.ts";
import { serverOf } from "#scenario/resolving/takeawayGroups.ts";

/** The table itself where ways take no time. */
export function withWalks(table: StepTable, scenario: Scenario): StepTable {
  if (scenario.walk === undefined) return table;
  const calling = table.processes.filter(({ steps }) => steps.some(isTask));
  // The stations come first, each with the number that its valve goes by.
  const stations = scenario.stations.map(({ name }) => name);
  const sites = [...new Set([...stations, ...calling.map((process) => siteOf(process, scenario))])];
  return {
    ...table,
    places: [
      ...table.places,
      ...whereabouts(scenario, sites),
      ...calling.map((each) => numberPlace(each, sites, scenario)),
    ],
    processes: table.processes.map((process) =>
      calling.includes(process) ? walking(process, scenario, sites) : process,
    ),
  };
}

/** A call for a hand that then does one of the tasks; to go on a break nobody walks. */
function isTask(step: StepSpec): boolean {
  const states: readonly string[] = Object.values(stateOf);
  return (
    isCallOfHand(step) && step.shows?.some(({ by, state }) => by === "hand" && states.includes(String(state))) === true
  );
}

/** Places of one server stand side by side. */
function siteOf({ resource }: ProcessSpec, scenario: Scenario): string {
  return serverOf(resource, scenario) ?? resource;
}

/** Each operator's token of whereabouts carries the number of the place where he was last; at the beginning he was nowhere. */
function whereabouts({ operators }: Scenario, sites: readonly string[]): readonly PlaceSpec[] {
  return operatorNames(operators).map((_, i) => ({
    name: `whereabouts ${i + 1}`,
    tokens: 1,
    cargo: sites.length,
    rank: rank.crew,
  }));
}

const ownNumber = ({ name }: ProcessSpec): string => `number of ${name}`;

function numberPlace(process: ProcessSpec, sites: readonly string[], scenario: Scenario): PlaceSpec {
  return { name: ownNumber(process), tokens: 1, cargo: sites.indexOf(siteOf(process, scenario)) };
}

function walking(process: ProcessSpec, scenario: Scenario, sites: readonly string[]): ProcessSpec {
  const here = sites.indexOf(siteOf(process, scenario));
  let isHeld = false;
  const steps = process.steps.flatMap((step): readonly StepSpec[] => {
    if (isTask(step)) {
      isHeld = true;
      return walkingTo(step, process, { scenario, sites, here });
    }
    if (!isHeld || !step.gives?.some(({ place }) => place === "operators")) return [step];
    isHeld = false;
    return leaving(step, process);
  });
  return { ...process, steps };
}

interface Way {
  readonly scenario: Scenario;
  readonly sites: readonly string[];
  readonly here: number;
}

/**
 * The number of the place he comes from decides whether he has to walk. It stands where the process keeps a number of its own, which
 * it takes back before it works: a station's valve goes by it.
 */
function walkingTo(step: StepSpec, process: ProcessSpec, { scenario, sites, here }: Way): readonly StepSpec[] {
  const { needs = [], priority, patience, shows = [], ...work } = step;
  const from = Array.from({ length: sites.length + 1 }, (_, number) => number);
  const doing = shows.find(({ by }) => by === "hand")?.state as string;
  const meanwhile = needs.find(({ place }) => place === "operators")?.meanwhile;
  const waits: readonly ShowSpec[] = meanwhile === undefined ? [] : [{ resource: process.resource, state: meanwhile }];
  const nothing = { kind: "fixed", value: 0 } as const;
  return [
    {
      name: `call for ${step.name}`,
      needs,
      ...(priority === undefined ? {} : { priority }),
      ...(patience === undefined ? {} : { patience }),
      ...(step.stoppedBy === undefined ? {} : { stoppedBy: step.stoppedBy }),
    },
    {
      name: walkTo(step.name),
      needs: [{ place: "whereabouts 1", by: "hand", takes: "cargo" }],
      shows: [...waits, operatorShow(from.map((number) => (number === here ? doing : "walking")))],
      time: { laws: from.map((number) => ({ law: number === here ? nothing : scenario.walk! })) },
      stoppedBy: [],
    },
    // Held back by a stop after the way, the hand would never come free to end that stop.
    { ...work, shows, stoppedBy: [] },
  ];
}

function leaving(step: StepSpec, process: ProcessSpec): readonly StepSpec[] {
  const place = ownNumber(process);
  return [
    {
      ...step,
      needs: [...(step.needs ?? []), { place, takes: "cargo" }],
      gives: [{ place }, { place: "whereabouts 1", by: "hand" }, ...(step.gives ?? [])],
      stoppedBy: [],
    },
  ];
}
