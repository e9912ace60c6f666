// What no order of different stations can beat: the screw alone, all stations without waiting, the crew without waiting.
import { TICKS_PER_SECOND } from "#engine/sampler.ts";
import { PLASTICATOR } from "#cell/cycleNames.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { IdealCircuit } from "./idealCircuit.ts";
import { planOf } from "./planOf.ts";

/** Bounds at mean times, the one that binds first; the true period may be longer. */
export function boundCircuits(scenario: Scenario): readonly IdealCircuit[] {
  const { program } = planOf(scenario);
  const mean = (process: string, step: string, law = 0): number => {
    const row = program.rows.find(
      (each) => each.name === step && program.table.processes[each.process]!.name === process,
    );
    const samplers = row?.draw?.samplers ?? [];
    return (samplers[law] ?? samplers[0])?.meanTicks ?? 0;
  };
  const names = scenario.stations.map((station) => station.name);
  const shift = mean("valve", "shift to neutral");
  const screw = names.map(
    (name, k) => mean(PLASTICATOR, "recharge", k) + mean(name, "drop") + mean(name, "shift to port") + shift,
  );
  const turn = names.map((name) => {
    const process = program.table.processes.find((each) => each.name === name)!;
    return process.steps.reduce((sum, step) => sum + mean(name, step.name), 0);
  });
  const crew = scenario.stations
    .filter((station) => station.remove.by === "operator")
    .map((station) => mean(station.name, "remove"));
  const bounds = [
    { name: `${PLASTICATOR}, the quickest shot again and again`, resources: [PLASTICATOR], ticks: Math.min(...screw) },
    {
      name: "all stations, none ever waiting",
      resources: names,
      ticks: 1 / turn.reduce((sum, ticks) => sum + 1 / ticks, 0),
    },
    ...(crew.length === names.length
      ? [{ name: "crew", resources: ["operators"], ticks: Math.min(...crew) / scenario.operators }]
      : []),
  ].toSorted((a, b) => b.ticks - a.ticks);
  return bounds.map(({ name, resources, ticks }, i) => ({
    name,
    steps: [],
    resources,
    seconds: ticks / TICKS_PER_SECOND,
    shots: 1,
    secondsPerShot: ticks / TICKS_PER_SECOND,
    slackSeconds: (bounds[0]!.ticks - ticks) / TICKS_PER_SECOND,
    critical: i === 0,
  }));
}
