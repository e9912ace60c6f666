// Adds quality checks to a cycle table: the mass of each part, the rejects with their reasons, and the longest time in the mold.
import type { GiveSpec, PlaceSpec, ScaleSpec } from "#engine/compiler/stepTable.ts";
import type { Distribution } from "#engine/distributions/distribution.ts";
import type { QualitySpec, Scenario, StationSpec } from "#scenario/scenario.ts";
import {
  hasRole,
  lastWith,
  shotRoles,
  type CellProcess,
  type CellStep,
  type CellTable,
} from "#cell/words/cellTable.ts";
import { rejectsOf } from "#cell/words/cycleNames.ts";
import { named, namedAfter, stepNames, subjectNames } from "#cell/words/stepNames.ts";
import { fixed } from "#cell/words/tableWords.ts";
import { underCooledPlace } from "./withContact.ts";

/** Places by which a station starts and stops its clocks, and by which the clocks report. */
export const shutPlace = (station: string): string => `shut ${station}`;
const opensPlace = (station: string): string => `opens ${station}`;
const overduePlace = (station: string): string => `overdue ${station}`;
const shotPlace = (station: string): string => `shot of ${station}`;
const restartPlace = (station: string): string => `restart of ${station}`;

/** Reasons for rejects, as printed in tables. */
export const rejectReasons = [
  "too light",
  "too heavy",
  "base share",
  "too long in the mold",
  "under-cooled",
  "restart",
] as const;
type RejectReason = (typeof rejectReasons)[number];

/** Returns the same table where every part is good. */
export function withQuality(table: CellTable, scenario: Scenario): CellTable {
  const { quality, maxInMold, startUp, stations } = scenario;
  const scrap = startUp?.scrap ?? 0;
  if (quality === undefined && maxInMold === undefined && scrap === 0) return table;
  const watched = maxInMold === undefined ? [] : stations;
  const starting = scrap === 0 ? [] : stations;
  return {
    ...table,
    places: [...table.places, ...watched.flatMap(moldClockPlaces), ...starting.flatMap(restartPlaces)],
    processes: [
      ...table.processes.map((process) => {
        const station = stations.find(({ name }) => process.kind === "station" && name === process.station);
        return station ? judgingStation(process, station, scenario) : process;
      }),
      ...watched.map((station) => moldClock(station, maxInMold!)),
      ...starting.map((station) => idleClock(station, scenario)),
    ],
  };
}

const around = (sd: number): Distribution => (sd > 0 ? { kind: "normal", mean: 1, sd } : { kind: "fixed", value: 1 });

/** The shot is weighed when it drops, each part after its removal. Parts are judged before takeaway. */
function judgingStation(process: CellProcess, station: StationSpec, scenario: Scenario): CellProcess {
  const { quality } = scenario;
  const weighsShot: ScaleSpec = { distribution: around(quality?.shotSpread ?? 0), stream: "shot mass", keeps: true };
  const steps = process.steps.map((step): CellStep => {
    const started = clockGives(step, station, scenario);
    const weighed = hasRole(step, ...shotRoles) && quality ? { ...step, scale: weighsShot } : step;
    return started.length > 0 ? { ...weighed, gives: [...(step.gives ?? []), ...started] } : weighed;
  });
  const removal = removalAt(steps);
  return {
    ...process,
    steps: [...steps.slice(0, removal + 1), ...judging(process, station, scenario), ...steps.slice(removal + 1)],
  };
}

/** Tokens that the end of a step gives to the clocks of its station. */
function clockGives(step: CellStep, { name }: StationSpec, { maxInMold, startUp }: Scenario): readonly GiveSpec[] {
  const isWatched = maxInMold !== undefined;
  if (isWatched && hasRole(step, "mold.close")) return [{ place: shutPlace(name) }];
  if (isWatched && hasRole(step, "mold.open")) return [{ place: opensPlace(name) }];
  return (startUp?.scrap ?? 0) > 0 && hasRole(step, ...shotRoles) ? [{ place: shotPlace(name) }] : [];
}

/** The end of the removal, which may be the operator's release; where a pin removes the parts, the transfer to the mask. */
function removalAt(steps: readonly CellStep[]): number {
  return lastWith(steps, "mold.remove", "crew.releaseFromRemoval", "mold.handToMask");
}

/** A check that rejects all parts of a shot if its token is present: too long or too short in the mold, or too soon after a start-up. */
interface ShotCheck {
  readonly step: Pick<CellStep, "role" | "name">;
  readonly place: string;
  readonly reason: RejectReason;
}

function shotChecks({ name }: StationSpec, { maxInMold, startUp, quality }: Scenario): readonly ShotCheck[] {
  const clock: ShotCheck = {
    step: named("judge.moldClock"),
    place: overduePlace(name),
    reason: "too long in the mold",
  };
  const restart: ShotCheck = { step: named("judge.restart"), place: restartPlace(name), reason: "restart" };
  // The last check may be passed by: the next shot of the station forgets what is left.
  const contact: ShotCheck = { step: named("judge.contact"), place: underCooledPlace(name), reason: "under-cooled" };
  return [
    ...(maxInMold === undefined ? [] : [clock]),
    ...((startUp?.scrap ?? 0) > 0 ? [restart] : []),
    ...(quality?.maxDemold === undefined ? [] : [contact]),
  ];
}

/** Parts that are already rejects are weighed as well, so that all streams stay synchronized. */
function judging(process: CellProcess, station: StationSpec, scenario: Scenario): readonly CellStep[] {
  const { quality } = scenario;
  const cavities = Array.from({ length: station.cavities }, (_, i) => i + 1);
  const judged = quality ? cavities.flatMap((cavity) => judgeCavity(cavity, station, quality)) : [];
  const passed: CellStep = { ...named("judge.done"), next: nameOnward(process) };
  const checks = shotChecks(station, scenario);
  if (checks.length === 0) return [...judged, passed];
  const rejected = quality ? cavities.flatMap((cavity) => drawCavity(cavity, station, quality)) : [];
  return [
    ...checks.map(({ step, place, reason }, i): CellStep => ({
      ...step,
      stoppedBy: [],
      needs: [{ place }],
      patience: {
        time: fixed({ kind: "fixed", value: 0 }),
        leaveFor: checks[i + 1]?.step.name ?? judged[0]?.name ?? passed.name,
      },
      counts: { [rejectsOf(station.name, reason)]: station.cavities },
      next: rejected[0]?.name ?? passed.name,
    })),
    ...rejected,
    { ...named("judge.allRejected"), next: passed.name },
    ...judged,
    passed,
  ];
}

/** The step that follows the removal, and that the checks precede. */
function nameOnward({ steps }: CellProcess): string {
  const removal = removalAt(steps);
  return steps[removal]!.next ?? steps[removal + 1]?.name ?? steps[0]!.name;
}

const ownCavity = (station: StationSpec, cavity: number): string => `${station.name} cavity ${cavity}`;

function inspects(cavity: number, station: StationSpec, quality: QualitySpec): ScaleSpec {
  return {
    distribution: { kind: "uniform", min: 0, max: 1 },
    stream: "base share",
    alone: true,
    resource: ownCavity(station, cavity),
    below: { limit: quality.rejects, next: subjectNames["judge.weighReject"](cavity) },
  };
}

/** The mass of a part in units of the mean mass: deviation of the shot + deviation of the cavity − 1. */
function judgeCavity(cavity: number, station: StationSpec, quality: QualitySpec): readonly CellStep[] {
  const { lightest, heaviest, cavitySpread } = quality;
  const weighs: ScaleSpec = {
    distribution: around(cavitySpread),
    stream: "mass",
    resource: ownCavity(station, cavity),
  };
  const [tooLight, tooHeavy] = [namedAfter("judge.tooLight", cavity), namedAfter("judge.tooHeavy", cavity)];
  const done = namedAfter("judge.partDone", cavity);
  const next = done.name;
  const count = (reason: RejectReason): CellStep["counts"] => ({ [rejectsOf(station.name, reason)]: 1 });
  const inspected = quality.rejects > 0 ? { scale: inspects(cavity, station, quality) } : {};
  return [
    { ...namedAfter("judge.inspect", cavity), ...inspected },
    {
      ...namedAfter("judge.weigh", cavity),
      scale: {
        ...weighs,
        ...(lightest === undefined ? {} : { below: { limit: 1 + lightest / station.partMass!, next: tooLight.name } }),
        ...(heaviest === undefined ? {} : { above: { limit: 1 + heaviest / station.partMass!, next: tooHeavy.name } }),
      },
      next,
    },
    { ...tooLight, counts: count("too light")!, next },
    { ...tooHeavy, counts: count("too heavy")!, next },
    { ...namedAfter("judge.weighReject", cavity), scale: weighs, counts: count("base share")!, next },
    done,
  ];
}

function drawCavity(cavity: number, station: StationSpec, quality: QualitySpec): readonly CellStep[] {
  const { below: _, ...inspected } = inspects(cavity, station, quality);
  return [
    { ...namedAfter("judge.inspectRejected", cavity), ...(quality.rejects > 0 ? { scale: inspected } : {}) },
    {
      ...namedAfter("judge.weighRejected", cavity),
      scale: { distribution: around(quality.cavitySpread), stream: "mass", resource: ownCavity(station, cavity) },
    },
  ];
}

function moldClockPlaces({ name }: StationSpec): readonly PlaceSpec[] {
  return [shutPlace, opensPlace, overduePlace].map((place) => ({ name: place(name), tokens: 0 }));
}

/** Runs from the closed mold to the open mold. No stop holds it. */
function moldClock({ name }: StationSpec, maxInMold: number): CellProcess {
  const opens = [{ place: opensPlace(name) }];
  const next = stepNames["moldClock.awaitShut"];
  return {
    name: `mold clock ${name}`,
    kind: "mold clock",
    resource: name,
    steps: [
      { ...named("moldClock.awaitShut"), needs: [{ place: shutPlace(name) }], stoppedBy: [] },
      {
        ...named("moldClock.shut"),
        needs: opens,
        patience: { time: fixed({ kind: "fixed", value: maxInMold }), leaveFor: stepNames["moldClock.overdue"] },
        stoppedBy: [],
        next,
      },
      { ...named("moldClock.overdue"), gives: [{ place: overduePlace(name) }] },
      { ...named("moldClock.awaitOpen"), needs: opens, stoppedBy: [], next },
    ],
  };
}

function restartPlaces({ name }: StationSpec): readonly PlaceSpec[] {
  return [shotPlace, restartPlace].map((place) => ({ name: place(name), tokens: 0 }));
}

/** Measures the time since the last shot. After a long time the next shots are rejects, as after a cold start. */
function idleClock({ name }: StationSpec, { startUp, run }: Scenario): CellProcess {
  const shot = [{ place: shotPlace(name) }];
  const { afterOff = 0, scrap = 0 } = startUp ?? {};
  const next = stepNames["idleClock.awaitShot"];
  return {
    name: `idle clock ${name}`,
    kind: "idle clock",
    resource: name,
    begins: stepNames[run.start === "cold" ? "idleClock.idle" : "idleClock.awaitShot"],
    steps: [
      {
        ...named("idleClock.awaitShot"),
        needs: shot,
        patience: { time: fixed({ kind: "fixed", value: afterOff }), leaveFor: stepNames["idleClock.idle"] },
        stoppedBy: [],
        next,
      },
      { ...named("idleClock.idle"), gives: [{ place: restartPlace(name), count: scrap }] },
      { ...named("idleClock.awaitFirstShot"), needs: shot, stoppedBy: [], next },
    ],
  };
}
