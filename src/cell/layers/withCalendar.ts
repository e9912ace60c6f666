// Adds shifts, breaks, starts and planned changes to a cycle table: whoever is called away gives up its token until it is called back.
import type {
  NeedSpec,
  PlaceSpec,
  ProcessSpec,
  ResourceSpec,
  StateSpec,
  StepSpec,
  StepTable,
} from "#engine/compiler/stepTable.ts";
import type { AbsenceSpec, Scenario, StationSpec } from "#scenario/scenario.ts";
import { BEYOND } from "#cell/delivery/commonAccumulator.ts";
import { clockUntil, forEver, gone, isSame, lasting, mayStart, NEVER, OFF, SCREW } from "#cell/words/calendarWords.ts";
import { PLASTICATOR, SHIFT } from "#cell/words/cycleNames.ts";
import { meanSeconds } from "#cell/table/meanSeconds.ts";
import { operatorCalendar } from "./operatorCalendar.ts";
import { changeProcess, purge, restState } from "./plannedChange.ts";
import { stopsInShift } from "./stopProcesses.ts";
import { fixed, rank, working } from "#cell/words/tableWords.ts";

const heated = (station: string): string => `melt is hot for ${station}`;

/** The table itself where the cell never rests and nothing is changed. */
export function withCalendar(table: StepTable, scenario: Scenario): StepTable {
  const { calendar, changes = [], stations } = scenario;
  if (!calendar && changes.length === 0) return table;
  return {
    resources: [
      ...table.resources.map((resource) => ({
        ...resource,
        states: [...resource.states, ...moreStates(resource, scenario)],
      })),
      ...(stopsInShift(scenario).length > 0 ? [shiftItself] : []),
    ],
    // These come first: who is called away is served before the next cycle begins.
    places: [...places(scenario), ...table.places],
    processes: [
      ...table.processes.map((process) => {
        const station = stations.find(({ name }) => name === process.name);
        return station ? startingByToken(process, station) : workingByToken(process);
      }),
      ...(calendar ? calendarProcesses(table, scenario) : []),
      ...changes.map((change) => changeProcess(change, scenario)),
    ],
  };
}

/** Time on shift as work of a resource of its own, so that a repair's time can pass with it. */
const shiftItself: ResourceSpec = { name: SHIFT, states: [working("on shift"), { name: OFF, kind: "off" }] };

function moreStates(
  { name }: ResourceSpec,
  { calendar, startUp, changes = [], stations }: Scenario,
): readonly StateSpec[] {
  const isStation = stations.some((station) => station.name === name);
  const isOperator = /^operator [0-9]+$/u.test(name);
  if (!isStation && !isOperator && name !== PLASTICATOR) return [];
  const off: StateSpec[] = calendar ? [{ name: OFF, kind: "off" }] : [];
  if (isOperator) return calendar ? [...off, { name: "on break", kind: "off" }] : [];
  if (isStation) return changes.length > 0 ? [...off, working("changeover")] : off;
  const purges = startUp || changes.length > 0 ? [working("heating"), working("purging"), working("changeover")] : [];
  return [...off, ...purges];
}

function places({ stations, calendar }: Scenario): readonly PlaceSpec[] {
  return [
    ...stations.map(({ name }) => ({ name: mayStart(name), tokens: 1, rank: rank.station })),
    { name: SCREW, tokens: 1, rank: rank.plasticator },
    ...(calendar ? stations.map(({ name }) => ({ name: gone(name), tokens: 0, rank: rank.station })) : []),
    ...(calendar ? stations.map(({ name }) => ({ name: heated(name), tokens: 0, rank: rank.plasticator })) : []),
    { name: NEVER, tokens: 0 },
  ];
}

/** A cycle begins with the station's token in hand and ends by giving it back. */
function startingByToken(process: ProcessSpec, { name }: StationSpec): ProcessSpec {
  const [first, ...others] = process.steps;
  const ready: StepSpec = { name: "ready again", gives: [{ place: mayStart(name) }], next: first!.name, stoppedBy: [] };
  const begins = { ...first!, needs: [...(first!.needs ?? []), { place: mayStart(name), quiet: true } as const] };
  const goesOn = others.map((step) => (step.next === first!.name ? { ...step, next: ready.name } : step));
  return { ...process, steps: [begins, ...goesOn, ready] };
}

/** What the screw has begun it ends; it begins nothing without its token. */
function workingByToken(process: ProcessSpec): ProcessSpec {
  const begins: readonly string[] = ["recharge", "parison", "fill at first"];
  const need: NeedSpec = { place: SCREW };
  const steps = process.steps.map((step, i): StepSpec => {
    const isPlasticator = step.time?.resource === PLASTICATOR || process.name === PLASTICATOR;
    if (!isPlasticator) return step;
    const goesOn = process.steps[i + 1]?.name;
    const ends =
      step.name === BEYOND ||
      step.name === "fill to the brim" ||
      (begins.includes(step.name) && goesOn !== BEYOND && step.name !== "fill at first");
    return {
      ...step,
      ...(begins.includes(step.name) ? { needs: [...(step.needs ?? []), need] } : {}),
      ...(ends ? { gives: [...(step.gives ?? []), { place: SCREW }] } : {}),
    };
  });
  return { ...process, steps };
}

function calendarProcesses(table: StepTable, scenario: Scenario): readonly ProcessSpec[] {
  const { stations, operators } = scenario;
  return [
    ...stations.map((station) => stationCalendar(table, station, scenario)),
    screwCalendar(scenario),
    ...Array.from({ length: operators }, (_, i) => operatorCalendar(i, scenario)),
    ...(stopsInShift(scenario).length > 0 ? [shiftProcess(scenario)] : []),
  ];
}

function shiftProcess({ calendar }: Scenario): ProcessSpec {
  const shows = (state: string): StepSpec["shows"] => [{ resource: SHIFT, state }];
  const steps = calendar!.off
    .filter(({ why }) => why === OFF)
    .flatMap(({ from, until }): readonly StepSpec[] => [
      clockUntil(from),
      { name: OFF, shows: shows(OFF)!, time: lasting(until) },
      { name: "next shift", shows: shows("on shift")! },
    ]);
  return { name: "shifts", resource: SHIFT, steps: [...steps, forEver] };
}

/** No cycle begins that cannot end before the shift does, at mean times; those under way end. */
function stationCalendar(table: StepTable, station: StationSpec, scenario: Scenario): ProcessSpec {
  const { calendar } = scenario;
  const cycle = table.processes.find((process) => process.name === station.name)!;
  const turn = meanSeconds(cycle);
  const steps = calendar!.off.flatMap((absence): readonly StepSpec[] => {
    const waiting = calendar!.operators.filter((own) => own.some((each) => isSame(each, absence))).length;
    return [
      clockUntil(absence.from - turn),
      {
        name: "leave",
        needs: [{ place: mayStart(station.name) }],
        ...(waiting > 0 ? { gives: [{ place: gone(station.name), count: waiting }] } : {}),
        stoppedBy: [],
      },
      {
        name: OFF,
        shows: [{ resource: station.name, state: OFF }],
        time: lasting(absence.until),
        ...(isStart(absence, scenario) ? {} : { gives: [{ place: mayStart(station.name) }] }),
        stoppedBy: [],
      },
      ...(isStart(absence, scenario) ? [awaitHeat(station)] : []),
    ];
  });
  return { name: `shifts of ${station.name}`, resource: station.name, steps: [...steps, forEver] };
}

/** A rest after which the screw heats up and purges before anybody gets melt. */
function isStart({ from, until, why }: AbsenceSpec, { startUp }: Scenario): boolean {
  if (startUp === undefined || why !== OFF || until - from < startUp.afterOff) return false;
  return startUp.heatUp > 0 || startUp.purge > 0;
}

function awaitHeat({ name }: StationSpec): StepSpec {
  return {
    name: "await the screw",
    needs: [{ place: heated(name), meanwhile: "awaiting melt" }],
    gives: [{ place: mayStart(name) }],
    stoppedBy: [],
  };
}

/** After a long rest the screw heats up and purges before it works again. */
function screwCalendar(scenario: Scenario): ProcessSpec {
  const { calendar, startUp, stations } = scenario;
  const shows = (state: string): Pick<StepSpec, "shows" | "stoppedBy"> => ({
    shows: [{ resource: PLASTICATOR, state }],
    stoppedBy: [],
  });
  const steps = calendar!.off
    .filter(({ why }) => why === OFF)
    .flatMap((absence): readonly StepSpec[] => {
      const starts = isStart(absence, scenario);
      const { heatUp = 0, purge: purged = 0 } = starts ? startUp! : {};
      const ready = starts ? stations.map(({ name }) => ({ place: heated(name) })) : [];
      return [
        clockUntil(absence.from),
        { name: "leave", needs: [{ place: SCREW }], stoppedBy: [] },
        { name: OFF, ...shows(OFF), time: lasting(absence.until) },
        ...(heatUp > 0
          ? [{ name: "heat up", ...shows("heating"), time: fixed({ kind: "fixed", value: heatUp }) }]
          : []),
        ...(purged > 0 ? [purge(purged, "purge at a start", scenario)] : []),
        { name: "work again", ...shows(restState(scenario)), gives: [{ place: SCREW }, ...ready] },
      ];
    });
  return { name: "shifts of the screw", resource: PLASTICATOR, steps: [...steps, forEver] };
}
