// Adds work shifts, breaks, start-ups and planned changes to a cycle table; a resource off shift lacks its token.
import type { PlaceSpec, StateSpec } from "#engine/compiler/stepTable.ts";
import type { AbsenceSpec, Scenario, StationSpec } from "#scenario/scenario.ts";
import { byTimetable, isOffShift, NEVER, restsOf, whileAway, type Turn } from "#cell/words/calendarWords.ts";
import type { CellProcess, CellResource, CellStep, CellTable } from "#cell/words/cellTable.ts";
import { PLASTICATOR, SHIFT } from "#cell/words/cycleNames.ts";
import { lastPartsOut, mayStart, SCREW_MAY_WORK } from "#cell/words/placeNames.ts";
import { stateNames, type StateName } from "#cell/words/stateNames.ts";
import { named } from "#cell/words/stepNames.ts";
import { meanSeconds } from "#cell/table/meanSeconds.ts";
import { operatorCalendar } from "./operatorCalendar.ts";
import { changeProcess, purge, restState } from "./plannedChange.ts";
import { stopsInShift } from "./stopProcesses.ts";
import { fixed, rank, settingUp, working } from "#cell/words/tableWords.ts";

const heated = (station: string): string => `melt is hot for ${station}`;

/** Returns the same table where there is neither a calendar nor a change. */
export function withCalendar(table: CellTable, scenario: Scenario): CellTable {
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
    // These places come first, so that the end of a work shift is served before the next cycle begins.
    places: [...places(scenario), ...table.places],
    processes: [
      ...table.processes.map((process) => {
        const station = stations.find(({ name }) => process.kind === "station" && name === process.station);
        return station ? startingByToken(process, station) : workingByToken(process);
      }),
      ...(calendar ? calendarProcesses(table, scenario) : []),
      ...changes.map((change) => changeProcess(change, scenario)),
    ],
  };
}

/** Time on shift is the work of a separate resource, so that repair time can pass with it. */
const offShift: StateSpec = { name: stateNames.offShift, kind: "off" };
const shiftItself: CellResource = { name: SHIFT, kind: "shift", states: [working(stateNames.onShift), offShift] };

function moreStates({ kind }: CellResource, { calendar, startUp, changes = [] }: Scenario): readonly StateSpec[] {
  const { heating, purging, changeover, onBreak } = stateNames;
  const off = calendar ? [offShift] : [];
  const isChanged = changes.length > 0;
  if (kind === "operator") return calendar ? [...off, { name: onBreak, kind: "off" }] : [];
  if (kind === "station") return isChanged ? [...off, settingUp(changeover)] : off;
  if (kind !== "screw") return [];
  return startUp || isChanged ? [...off, ...[heating, purging, changeover].map(settingUp)] : off;
}

function places({ stations, calendar }: Scenario): readonly PlaceSpec[] {
  return [
    ...stations.map(({ name }) => ({ name: mayStart(name), tokens: 1, rank: rank.station })),
    { name: SCREW_MAY_WORK, tokens: 1, rank: rank.plasticator },
    ...(calendar ? stations.map(({ name }) => ({ name: lastPartsOut(name), tokens: 0, rank: rank.station })) : []),
    ...(calendar ? stations.map(({ name }) => ({ name: heated(name), tokens: 0, rank: rank.plasticator })) : []),
    { name: NEVER, tokens: 0 },
  ];
}

/** A cycle takes the station's token at its beginning and returns it at its end. */
function startingByToken(process: CellProcess, { name }: StationSpec): CellProcess {
  const [first, ...others] = process.steps;
  const gives = [{ place: mayStart(name) }];
  const ready: CellStep = { ...named("mold.ready"), gives, next: first!.name, stoppedBy: [] };
  const begins = { ...first!, needs: [...(first!.needs ?? []), { place: mayStart(name), quiet: true } as const] };
  const goesOn = others.map((step) => (step.next === first!.name ? { ...step, next: ready.name } : step));
  return { ...process, steps: [begins, ...goesOn, ready] };
}

/** The screw takes its token before the first of several timed steps in a row, and returns it after the last. */
function workingByToken(process: CellProcess): CellProcess {
  if (process.kind !== "screw" && process.kind !== "head") return process;
  const isWork = (step: CellStep | undefined): boolean =>
    step?.time !== undefined && (step.time.resource ?? process.resource) === PLASTICATOR;
  const token = { place: SCREW_MAY_WORK };
  const steps = process.steps.map((step, i): CellStep => {
    if (!isWork(step)) return step;
    return {
      ...step,
      ...(isWork(process.steps[i - 1]) ? {} : { needs: [...(step.needs ?? []), token] }),
      ...(isWork(process.steps[i + 1]) ? {} : { gives: [...(step.gives ?? []), token] }),
    };
  });
  return { ...process, steps };
}

function calendarProcesses(table: CellTable, scenario: Scenario): readonly CellProcess[] {
  const { stations, operators } = scenario;
  return [
    ...stations.map((station) => stationCalendar(table, station, scenario)),
    screwCalendar(scenario),
    ...Array.from({ length: operators }, (_, i) => operatorCalendar(i, scenario)),
    ...(stopsInShift(scenario).length > 0 ? [shiftProcess(scenario)] : []),
  ];
}

function shiftProcess({ calendar }: Scenario): CellProcess {
  const shows = (state: StateName) => ({ shows: [{ resource: SHIFT, state }] });
  const steps: readonly CellStep[] = [
    { ...named("calendar.off"), ...shows(stateNames.offShift), time: whileAway },
    { ...named("calendar.nextShift"), ...shows(stateNames.onShift) },
  ];
  const turns = calendar!.off.filter(isOffShift).map(({ from, until }) => ({ from, until, steps }));
  return { name: "shifts", kind: "calendar", resource: SHIFT, ...byTimetable(turns) };
}

/** A cycle begins only if it ends before the work shift at mean times. Cycles under way finish. */
function stationCalendar(table: CellTable, station: StationSpec, scenario: Scenario): CellProcess {
  const { calendar } = scenario;
  const cycle = table.processes.find(({ kind, station: own }) => kind === "station" && own === station.name)!;
  const turn = meanSeconds(cycle);
  const restsOfCrew = calendar!.operators.map(restsOf);
  const turns = calendar!.off.map((absence): Turn => {
    const waiting = isOffShift(absence) ? restsOfCrew.filter((rests) => rests.has(absence.from)).length : 0;
    const steps: readonly CellStep[] = [
      {
        ...named("calendar.leave"),
        needs: [{ place: mayStart(station.name) }],
        ...(waiting > 0 ? { gives: [{ place: lastPartsOut(station.name), count: waiting }] } : {}),
        stoppedBy: [],
      },
      {
        ...named("calendar.off"),
        shows: [{ resource: station.name, state: stateNames.offShift }],
        time: whileAway,
        ...(isStart(absence, scenario) ? {} : { gives: [{ place: mayStart(station.name) }] }),
        stoppedBy: [],
      },
      ...(isStart(absence, scenario) ? [awaitHeat(station)] : []),
    ];
    return { from: absence.from - turn, until: absence.until, steps };
  });
  const { name } = station;
  return { name: `shifts of ${name}`, kind: "calendar", resource: name, ...byTimetable(turns) };
}

/** Whether the screw heats up and purges after this absence, before any station gets melt. */
function isStart(absence: AbsenceSpec, { startUp }: Scenario): boolean {
  const { from, until } = absence;
  if (startUp === undefined || !isOffShift(absence) || until - from < startUp.afterOff) return false;
  return startUp.heatUp > 0 || startUp.purge > 0;
}

function awaitHeat({ name }: StationSpec): CellStep {
  return {
    ...named("calendar.awaitScrew"),
    needs: [{ place: heated(name), meanwhile: stateNames.awaitingMelt }],
    gives: [{ place: mayStart(name) }],
    stoppedBy: [],
  };
}

/** After a long rest the screw heats up and purges before it works again. */
function screwCalendar(scenario: Scenario): CellProcess {
  const { calendar, startUp, stations } = scenario;
  const shows = (state: StateName): Pick<CellStep, "shows" | "stoppedBy"> => ({
    shows: [{ resource: PLASTICATOR, state }],
    stoppedBy: [],
  });
  const turns = calendar!.off.filter(isOffShift).map((absence): Turn => {
    const starts = isStart(absence, scenario);
    const { heatUp = 0, purge: purged = 0 } = starts ? startUp! : {};
    const ready = starts ? stations.map(({ name }) => ({ place: heated(name) })) : [];
    const steps: readonly CellStep[] = [
      { ...named("calendar.leave"), needs: [{ place: SCREW_MAY_WORK }], stoppedBy: [] },
      { ...named("calendar.off"), ...shows(stateNames.offShift), time: whileAway },
      ...(heatUp > 0 ? [heatingUp(heatUp, shows(stateNames.heating))] : []),
      ...(purged > 0 ? [purge(purged, "purge at a start", scenario)] : []),
      { ...named("screw.resume"), ...shows(restState(scenario)), gives: [{ place: SCREW_MAY_WORK }, ...ready] },
    ];
    return { from: absence.from, until: absence.until, steps };
  });
  return { name: "shifts of the screw", kind: "calendar", resource: PLASTICATOR, ...byTimetable(turns) };
}

function heatingUp(seconds: number, shown: Pick<CellStep, "shows" | "stoppedBy">): CellStep {
  return { ...named("screw.heat"), ...shown, time: fixed({ kind: "fixed", value: seconds }) };
}
