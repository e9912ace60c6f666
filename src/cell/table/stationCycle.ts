// What a station does with its parison, whichever way the melt came: close, blow, cool, vent, open, removal, and steps of one's own.
import type { ProcessSpec, ResourceSpec, StepSpec } from "#engine/compiler/stepTable.ts";
import type { Distribution } from "#engine/distributions/distribution.ts";
import type { Scenario, StationSpec } from "#scenario/scenario.ts";
import { closesOf, partsOf } from "#cell/words/cycleNames.ts";
import { byHand } from "./crew.ts";
import { handToMask, hasMasks } from "./mask.ts";
import type { MeltDelivery } from "./meltDelivery.ts";
import { ownStepsAfter } from "./ownStepsAfter.ts";
import { fixed, waiting, working } from "#cell/words/tableWords.ts";

export function stationResource(scenario: Scenario, station: StationSpec, delivery: MeltDelivery): ResourceSpec {
  const awaitsOperator = station.remove.by === "operator" ? [waiting("awaiting removal")] : [];
  const removed = hasMasks(scenario) ? [waiting("awaiting takeaway")] : [working("removal"), ...awaitsOperator];
  return {
    name: station.name,
    states: [
      ...delivery.stationStates(station),
      ...["closing", "blowing", "cooling", "venting", "opening"].map(working),
      ...removed,
      ...ownSteps(scenario, station).map((step) => working(step.name)),
    ],
  };
}

export function stationCycle(delivery: MeltDelivery, scenario: Scenario, number: number): ProcessSpec {
  const station = scenario.stations[number]!;
  const masked = handToMask(scenario, station);
  const timed = (name: string, state: string, law: Distribution): StepSpec => ({
    name,
    shows: [{ resource: station.name, state }],
    time: fixed(law),
  });
  const { closeGives = [] } = delivery;
  const steps: StepSpec[] = [
    ...delivery.parison(station, number),
    {
      ...timed("close", "closing", station.close),
      ...(closeGives.length > 0 ? { gives: closeGives } : {}),
      counts: { [closesOf(station.name)]: 1 },
    },
    ...(delivery.afterClose?.(station) ?? []),
    timed("blow", "blowing", station.blow),
    timed("cool", "cooling", station.cool),
    timed("vent", "venting", station.vent),
    timed("open", "opening", station.open),
    ...(masked ? [masked] : removal(scenario, station)),
  ];
  const own = ownSteps(scenario, station);
  for (const extra of own) {
    const after = station.remove.by === "operator" && extra.after === "remove" ? "let go" : extra.after;
    let place = steps.findIndex((step) => step.name === after) + 1;
    // Steps of one's own after the same step come in the order in which they are listed, each with those that follow it.
    while (place < steps.length && followsOn(own, steps[place]!.name, extra.after)) place++;
    steps.splice(place, 0, timed(extra.name, extra.name, extra.time));
  }
  return { name: station.name, resource: station.name, cargo: number, priority: station.priority, steps };
}

/** Those that the mold itself goes through: with a mask, what follows the removal is none of its business. */
function ownSteps(scenario: Scenario, { extra }: StationSpec): StationSpec["extra"] {
  if (!hasMasks(scenario)) return extra;
  const beside = ownStepsAfter(extra, ["remove"]);
  return extra.filter((step) => !beside.includes(step));
}

/** True for a step of one's own that comes after the named step, directly or by way of others of one's own. */
function followsOn(extra: StationSpec["extra"], step: string, after: string): boolean {
  const own = extra.find((each) => each.name === step);
  return own !== undefined && (own.after === after || followsOn(extra, own.after, after));
}

/** By machine a time; by an operator the same time with one operator held. */
function removal(scenario: Scenario, station: StationSpec): readonly StepSpec[] {
  const removing: StepSpec = {
    name: "remove",
    shows: [{ resource: station.name, state: "removal" }],
    time: fixed(station.remove.time),
    counts: { [partsOf(station.name)]: station.cavities },
  };
  if (station.remove.by === "machine") return [removing];
  return byHand(scenario, { task: "removal", step: removing, meanwhile: "awaiting removal", lettingGo: "let go" });
}
