// Adds judgment to a cycle table: what each part weighs, which parts are rejects and why, and how long a mold may stay shut.
import type { PlaceSpec, ProcessSpec, ScaleSpec, StepSpec, StepTable } from "#engine/stepTable.ts";
import type { Distribution } from "#engine/distribution.ts";
import type { QualitySpec, Scenario, StationSpec } from "#scenario/scenario.ts";
import { rejectsOf } from "./cycleNames.ts";
import { fixed } from "./tableWords.ts";

/** Whether a token tells the mold clock that a mold is shut. */
export const isMoldClock = (place: string): boolean => place.startsWith("shut ");

/** Where the parts of a shot that was shut in too long are found out. */
export const LOOK_AT_CLOCK = "look at the mold clock";

/** Why a part is a reject, as tables say it. */
export const rejectReasons = ["too light", "too heavy", "base share", "too long in the mold"] as const;
export type RejectReason = (typeof rejectReasons)[number];

/** The table itself where every part is good. */
export function withQuality(table: StepTable, scenario: Scenario): StepTable {
  const { quality, maxInMold, stations } = scenario;
  if (quality === undefined && maxInMold === undefined) return table;
  const watched = maxInMold === undefined ? [] : stations;
  return {
    ...table,
    places: [...table.places, ...watched.flatMap(moldClockPlaces)],
    processes: [
      ...table.processes.map((process) => {
        const station = stations.find(({ name }) => name === process.name);
        return station ? judgingStation(process, station, scenario) : process;
      }),
      ...watched.map((station) => moldClock(station, maxInMold!)),
    ],
  };
}

const around = (sd: number): Distribution => (sd > 0 ? { kind: "normal", mean: 1, sd } : { kind: "fixed", value: 1 });

/** The shot is weighed as it drops, each part when it is out; judged parts come before whatever takes them away. */
function judgingStation(process: ProcessSpec, station: StationSpec, scenario: Scenario): ProcessSpec {
  const { quality, maxInMold } = scenario;
  const weighsShot: ScaleSpec = { law: around(quality?.shotSpread ?? 0), stream: "shot mass", keeps: true };
  const steps = process.steps.map((step): StepSpec => {
    if (step.name === "drop" && quality) return { ...step, scale: weighsShot };
    const mark =
      maxInMold === undefined ? undefined : step.name === "close" ? "shut" : step.name === "open" ? "opens" : undefined;
    return mark ? { ...step, gives: [...(step.gives ?? []), { place: `${mark} ${station.name}` }] } : step;
  });
  const removal = Math.max(
    steps.findIndex(({ name }) => name === "remove"),
    steps.findIndex(({ name }) => name === "let go"),
  );
  return {
    ...process,
    steps: [...steps.slice(0, removal + 1), ...judging(process, station, scenario), ...steps.slice(removal + 1)],
  };
}

/** Those of a shot that was shut in too long are all rejects, but are weighed like all others, so that no stream falls out of step. */
function judging(process: ProcessSpec, station: StationSpec, { quality, maxInMold }: Scenario): readonly StepSpec[] {
  const cavities = Array.from({ length: station.cavities }, (_, i) => i + 1);
  const onward = nameOnward(process);
  const judged = quality ? cavities.flatMap((cavity) => judgeCavity(cavity, station, quality)) : [];
  const passed: StepSpec = { name: "parts judged", next: onward };
  if (maxInMold === undefined) return [...judged, passed];
  const rejected = quality ? cavities.flatMap((cavity) => drawCavity(cavity, station, quality)) : [];
  return [
    {
      name: LOOK_AT_CLOCK,
      stoppedBy: [],
      needs: [{ place: `overdue ${station.name}` }],
      patience: { time: fixed({ kind: "fixed", value: 0 }), leaveFor: judged[0]?.name ?? passed.name },
      counts: { [rejectsOf(station.name, "too long in the mold")]: station.cavities },
      next: rejected[0]?.name ?? passed.name,
    },
    ...rejected,
    { name: "all rejected", next: passed.name },
    ...judged,
    passed,
  ];
}

/** The step after the removal, which the judgment comes before. */
function nameOnward({ steps }: ProcessSpec): string {
  const removal = Math.max(
    steps.findIndex(({ name }) => name === "remove"),
    steps.findIndex(({ name }) => name === "let go"),
  );
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
