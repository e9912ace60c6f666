// What a station does with its parison, whichever way the melt came: close, blow, cool, vent, open, removal, and extra steps.
import type { Distribution } from "#engine/distributions/distribution.ts";
import type { ExtraStepSpec, Scenario, StationSpec } from "#scenario/scenario.ts";
import { hasRole, type CellProcess, type CellResource, type CellStep } from "#cell/words/cellTable.ts";
import { closesOf, partsOf } from "#cell/words/cycleNames.ts";
import { stateNames } from "#cell/words/stateNames.ts";
import { named, stepNames } from "#cell/words/stepNames.ts";
import { byOperator } from "./crew.ts";
import { handToMask, hasMasks } from "./mask.ts";
import type { MeltDelivery } from "./meltDelivery.ts";
import { ownStepsAfter } from "./ownStepsAfter.ts";
import { fixed, ownState, waiting, working } from "#cell/words/tableWords.ts";

export function stationResource(scenario: Scenario, station: StationSpec, delivery: MeltDelivery): CellResource {
  const awaitsOperator = station.remove.by === "operator" ? [waiting(stateNames.noOperatorFree)] : [];
  const removed = hasMasks(scenario)
    ? [waiting(stateNames.awaitingTakeaway)]
    : [working(stateNames.removal), ...awaitsOperator];
  const { closing, blowing, cooling, venting, opening } = stateNames;
  return {
    name: station.name,
    kind: "station",
    station: station.name,
    states: [
      ...delivery.stationStates(station),
      ...[closing, blowing, cooling, venting, opening].map(working),
      ...removed,
      ...ownSteps(scenario, station).map(ownState),
    ],
  };
}

export function stationCycle(delivery: MeltDelivery, scenario: Scenario, number: number): CellProcess {
  const station = scenario.stations[number]!;
  const masked = handToMask(scenario, station);
  const shown = (state: string, distribution: Distribution): Pick<CellStep, "shows" | "time"> => ({
    shows: [{ resource: station.name, state }],
    time: fixed(distribution),
  });
  const { closeGives = [] } = delivery;
  const steps: CellStep[] = [
    ...delivery.parison(station, number),
    {
      ...named("mold.close"),
      ...shown(stateNames.closing, station.close),
      ...(closeGives.length > 0 ? { gives: closeGives } : {}),
      counts: { [closesOf(station.name)]: 1 },
    },
    ...(delivery.afterClose?.(station) ?? []),
    { ...named("mold.blow"), ...shown(stateNames.blowing, station.blow) },
    { ...named("mold.cool"), ...shown(stateNames.cooling, station.cool) },
    { ...named("mold.vent"), ...shown(stateNames.venting, station.vent) },
    { ...named("mold.open"), ...shown(stateNames.opening, station.open) },
    ...(masked ? [masked] : removal(scenario, station)),
  ];
  const own = ownSteps(scenario, station);
  for (const extra of own) {
    let place = placeAfter(steps, extra);
    // Extra steps after the same step come in the order in which they are listed, each with those that follow it.
    while (place < steps.length && followsOn(own, steps[place]!.name, extra.after)) place++;
    steps.splice(place, 0, { role: "mold.own", name: extra.name, ...shown(extra.name, extra.time) });
  }
  const { name, priority } = station;
  return { name, kind: "station", station: name, resource: name, cargo: number, priority, steps };
}

/** After a removal by an operator, the operator is released first. */
function placeAfter(steps: readonly CellStep[], { after }: ExtraStepSpec): number {
  const released = steps.findIndex((step) => hasRole(step, "crew.releaseFromRemoval"));
  if (after === stepNames["mold.remove"] && released !== -1) return released + 1;
  return steps.findIndex(({ name }) => name === after) + 1;
}

/** Those that the mold itself goes through: with a mask, what follows the removal is done beside the mold. */
function ownSteps(scenario: Scenario, { extra }: StationSpec): StationSpec["extra"] {
  if (!hasMasks(scenario)) return extra;
  const beside = ownStepsAfter(extra, ["mold.remove"]);
  return extra.filter((step) => !beside.includes(step));
}

/** True for an extra step that comes after the named step, directly or by way of other extra steps. */
function followsOn(extra: StationSpec["extra"], step: string, after: string): boolean {
  const own = extra.find((each) => each.name === step);
  return own !== undefined && (own.after === after || followsOn(extra, own.after, after));
}

/** By machine a time; by an operator the same time, with one operator taken. */
function removal(scenario: Scenario, station: StationSpec): readonly CellStep[] {
  const removing: CellStep = {
    ...named("mold.remove"),
    shows: [{ resource: station.name, state: stateNames.removal }],
    time: fixed(station.remove.time),
    counts: { [partsOf(station.name)]: station.cavities },
  };
  if (station.remove.by === "machine") return [removing];
  return byOperator(scenario, { task: "removal", step: removing, meanwhile: stateNames.noOperatorFree });
}
