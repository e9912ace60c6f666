// Adds judgment to a cycle table: what each part weighs, which parts are rejects and why, and how long a mold may stay shut.
import type { GiveSpec, PlaceSpec, ProcessSpec, ScaleSpec, StepSpec, StepTable } from "#engine/compiler/stepTable.ts";
import type { Distribution } from "#engine/distributions/distribution.ts";
import type { QualitySpec, Scenario, StationSpec } from "#scenario/scenario.ts";
import { rejectsOf, shotSteps } from "#cell/words/cycleNames.ts";
import { fixed } from "#cell/words/tableWords.ts";

/** Whether a token tells the mold clock that a mold is shut. */
export const isMoldClock = (place: string): boolean => place.startsWith("shut ");

/** Where the parts of a shot that was shut in too long are found out. */
export const LOOK_AT_CLOCK = "look at the mold clock";

/** Why a part is a reject, as tables say it. */
export const rejectReasons = ["too light", "too heavy", "base share", "too long in the mold", "restart"] as const;
type RejectReason = (typeof rejectReasons)[number];

/** The table itself where every part is good. */
export function withQuality(table: StepTable, scenario: Scenario): StepTable {
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
        const station = stations.find(({ name }) => name === process.name);
        return station ? judgingStation(process, station, scenario) : process;
      }),
      ...watched.map((station) => moldClock(station, maxInMold!)),
      ...starting.map((station) => idleClock(station, scenario)),
    ],
  };
}

const around = (sd: number): Distribution => (sd > 0 ? { kind: "normal", mean: 1, sd } : { kind: "fixed", value: 1 });

/** The shot is weighed as it drops, each part when it is out; judged parts come before whatever takes them away. */
function judgingStation(process: ProcessSpec, station: StationSpec, scenario: Scenario): ProcessSpec {
  const { quality } = scenario;
  const weighsShot: ScaleSpec = { law: around(quality?.shotSpread ?? 0), stream: "shot mass", keeps: true };
  const steps = process.steps.map((step): StepSpec => {
    const told = clocksTold(step.name, station, scenario);
    const weighed = shotSteps.includes(step.name) && quality ? { ...step, scale: weighsShot } : step;
    return told.length > 0 ? { ...weighed, gives: [...(step.gives ?? []), ...told] } : weighed;
  });
  const removal = removalAt(steps);
  return {
    ...process,
    steps: [...steps.slice(0, removal + 1), ...judging(process, station, scenario), ...steps.slice(removal + 1)],
  };
}

/** What the clocks that watch a station are told when a step ends. */
function clocksTold(step: string, { name }: StationSpec, { maxInMold, startUp }: Scenario): readonly GiveSpec[] {
  const isWatched = maxInMold !== undefined;
  if (isWatched && step === "close") return [{ place: `shut ${name}` }];
  if (isWatched && step === "open") return [{ place: `opens ${name}` }];
  return (startUp?.scrap ?? 0) > 0 && shotSteps.includes(step) ? [{ place: `shot of ${name}` }] : [];
}

/** The step that takes the parts out, or the one before a pin does. */
function removalAt(steps: readonly StepSpec[]): number {
  const taken = steps.findLastIndex(({ name }) => name === "remove" || name === "let go");
  return taken === -1 ? steps.findIndex(({ name }) => name === "hand to the mask") - 1 : taken;
}

/** All parts of a shot are rejects where its token says so: it was shut in too long, or comes too soon after a rest. */
interface Look {
  readonly name: string;
  readonly place: string;
  readonly reason: RejectReason;
}

function looks({ name }: StationSpec, { maxInMold, startUp }: Scenario): readonly Look[] {
  const clock: Look = { name: LOOK_AT_CLOCK, place: `overdue ${name}`, reason: "too long in the mold" };
  const restart: Look = { name: "look for a restart", place: `restart of ${name}`, reason: "restart" };
  return [...(maxInMold === undefined ? [] : [clock]), ...((startUp?.scrap ?? 0) > 0 ? [restart] : [])];
}

/** Parts that are rejects anyhow are weighed like all others, so that no stream falls out of step. */
function judging(process: ProcessSpec, station: StationSpec, scenario: Scenario): readonly StepSpec[] {
  const { quality } = scenario;
  const cavities = Array.from({ length: station.cavities }, (_, i) => i + 1);
  const judged = quality ? cavities.flatMap((cavity) => judgeCavity(cavity, station, quality)) : [];
  const passed: StepSpec = { name: "parts judged", next: nameOnward(process) };
  const seen = looks(station, scenario);
  if (seen.length === 0) return [...judged, passed];
  const rejected = quality ? cavities.flatMap((cavity) => drawCavity(cavity, station, quality)) : [];
  return [
    ...seen.map(({ name, place, reason }, i): StepSpec => ({
      name,
      stoppedBy: [],
      needs: [{ place }],
      patience: {
        time: fixed({ kind: "fixed", value: 0 }),
        leaveFor: seen[i + 1]?.name ?? judged[0]?.name ?? passed.name,
      },
      counts: { [rejectsOf(station.name, reason)]: station.cavities },
      next: rejected[0]?.name ?? passed.name,
    })),
    ...rejected,
    { name: "all rejected", next: passed.name },
    ...judged,
    passed,
  ];
}

/** The step after the removal, which the judgment comes before. */
function nameOnward({ steps }: ProcessSpec): string {
  const removal = removalAt(steps);
  return steps[removal]!.next ?? steps[removal + 1]?.name ?? steps[0]!.name;
}

const ownCavity = (station: StationSpec, cavity: number): string => `${station.name} cavity ${cavity}`;

function inspects(cavity: number, station: StationSpec, quality: QualitySpec): ScaleSpec {
  return {
    law: { kind: "uniform", min: 0, max: 1 },
    stream: "base share",
    alone: true,
    resource: ownCavity(station, cavity),
    below: { limit: quality.rejects, next: `weigh reject ${cavity}` },
  };
}

/** A part weighs its share of the shot, and its cavity's own deviation on top of it: shot + cavity − 1, of the mean mass. */
function judgeCavity(cavity: number, station: StationSpec, quality: QualitySpec): readonly StepSpec[] {
  const { lightest, heaviest, cavitySpread } = quality;
  const weighs: ScaleSpec = { law: around(cavitySpread), stream: "mass", resource: ownCavity(station, cavity) };
  const after = `part ${cavity} judged`;
  const count = (reason: RejectReason): StepSpec["counts"] => ({ [rejectsOf(station.name, reason)]: 1 });
  return [
    { name: `inspect ${cavity}`, ...(quality.rejects > 0 ? { scale: inspects(cavity, station, quality) } : {}) },
    {
      name: `weigh ${cavity}`,
      scale: {
        ...weighs,
        ...(lightest === undefined
          ? {}
          : { below: { limit: 1 + lightest / station.partMass, next: `too light ${cavity}` } }),
        ...(heaviest === undefined
          ? {}
          : { above: { limit: 1 + heaviest / station.partMass, next: `too heavy ${cavity}` } }),
      },
      next: after,
    },
    { name: `too light ${cavity}`, counts: count("too light")!, next: after },
    { name: `too heavy ${cavity}`, counts: count("too heavy")!, next: after },
    { name: `weigh reject ${cavity}`, scale: weighs, counts: count("base share")!, next: after },
    { name: after },
  ];
}

function drawCavity(cavity: number, station: StationSpec, quality: QualitySpec): readonly StepSpec[] {
  const { below: _, ...inspected } = inspects(cavity, station, quality);
  return [
    { name: `inspect rejected ${cavity}`, ...(quality.rejects > 0 ? { scale: inspected } : {}) },
    {
      name: `weigh rejected ${cavity}`,
      scale: { law: around(quality.cavitySpread), stream: "mass", resource: ownCavity(station, cavity) },
    },
  ];
}

function moldClockPlaces({ name }: StationSpec): readonly PlaceSpec[] {
  return [`shut ${name}`, `opens ${name}`, `overdue ${name}`].map((place) => ({ name: place, tokens: 0 }));
}

/** Counts from the closed mold to the open one; no stop holds it. */
function moldClock({ name }: StationSpec, maxInMold: number): ProcessSpec {
  return {
    name: `mold clock ${name}`,
    resource: name,
    steps: [
      { name: "until it is shut", needs: [{ place: `shut ${name}` }], stoppedBy: [] },
      {
        name: "shut",
        needs: [{ place: `opens ${name}` }],
        patience: { time: fixed({ kind: "fixed", value: maxInMold }), leaveFor: "overdue" },
        stoppedBy: [],
        next: "until it is shut",
      },
      { name: "overdue", gives: [{ place: `overdue ${name}` }] },
      { name: "until it opens", needs: [{ place: `opens ${name}` }], stoppedBy: [], next: "until it is shut" },
    ],
  };
}

function restartPlaces({ name }: StationSpec): readonly PlaceSpec[] {
  return [`shot of ${name}`, `restart of ${name}`].map((place) => ({ name: place, tokens: 0 }));
}

/** The time since the last shot, whatever its cause: after a long one the next shots are rejects, as they are after a cold start. */
function idleClock({ name }: StationSpec, { startUp, run }: Scenario): ProcessSpec {
  const shot = [{ place: `shot of ${name}` }];
  const { afterOff = 0, scrap = 0 } = startUp ?? {};
  return {
    name: `idle clock ${name}`,
    resource: name,
    begins: run.start === "cold" ? "idle" : "await a shot",
    steps: [
      {
        name: "await a shot",
        needs: shot,
        patience: { time: fixed({ kind: "fixed", value: afterOff }), leaveFor: "idle" },
        stoppedBy: [],
        next: "await a shot",
      },
      { name: "idle", gives: [{ place: `restart of ${name}`, count: scrap }] },
      { name: "await the first shot", needs: shot, stoppedBy: [], next: "await a shot" },
    ],
  };
}
