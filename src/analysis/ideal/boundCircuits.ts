// What no order of different stations can beat: the screw alone, all stations without waiting, the crew without waiting.
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import { headOf, PLASTICATOR, VALVE } from "#cell/words/cycleNames.ts";
import { takeawayGroups } from "#scenario/resolving/takeawayGroups.ts";
import type { Scenario, StationSpec } from "#scenario/scenario.ts";
import type { IdealCircuit } from "./idealCircuit.ts";
import { planOf } from "./planOf.ts";

interface Bound {
  readonly name: string;
  readonly resources: readonly string[];
  readonly ticks: number;
}

/** Mean ticks of a step of a process; of a step with several laws the one with this number. */
type Mean = (process: string, step: string, law?: number) => number;

/** Bounds at mean times, the one that binds first; the true period may be longer. */
export function boundCircuits(scenario: Scenario): readonly IdealCircuit[] {
  const { program } = planOf(scenario);
  const mean: Mean = (process, step, law = 0) => {
    const row = program.rows.find(
      (each) => each.name === step && program.table.processes[each.process]!.name === process,
    );
    const samplers = row?.draw?.samplers ?? [];
    return (samplers[law] ?? samplers[0])?.meanTicks ?? 0;
  };
  const bounds = [
    ...screwBounds(scenario, mean),
    ...stationBounds(scenario, mean),
    ...serverBounds(scenario, mean),
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

/** What the quickest shot, again and again, would take of each way by which melt comes. */
function screwBounds(scenario: Scenario, mean: Mean): readonly Bound[] {
  const { stations, delivery } = scenario;
  const least = (of: (station: StationSpec, k: number) => number): number => Math.min(...stations.map(of));
  const back = mean(VALVE, "shift to neutral");
  const screw = (ticks: number): Bound => ({
    name: `${PLASTICATOR}, the quickest shot again and again`,
    resources: [PLASTICATOR],
    ticks,
  });
  if (delivery.kind === "continuous") {
    const zone = ["travel in", "close", "cut", "travel out"];
    const ticks = least(({ name }) => zone.reduce((sum, step) => sum + mean(name, step), 0));
    return [screw(least((_, k) => mean(PLASTICATOR, "parison", k))), { name: "die zone", resources: [], ticks }];
  }
  if (delivery.kind === "reciprocating-screw") {
    return [
      screw(
        least(
          ({ name }, k) => mean(PLASTICATOR, "recharge", k) + mean(name, "drop") + mean(name, "shift to port") + back,
        ),
      ),
    ];
  }
  if (delivery.accumulator === "common") {
    const ticks = least(({ name }) => mean(name, "shift to port") + mean(name, "drop") + back);
    const recharge = least((_, k) => mean(PLASTICATOR, "recharge", k) + mean(PLASTICATOR, "fill beyond the shot", k));
    return [screw(recharge), { name: VALVE, resources: [VALVE], ticks }];
  }
  const head = ({ name }: StationSpec): string => headOf(name);
  const chamber = stations.map((station, k) => mean(head(station), "recharge", k) + mean(station.name, "drop"));
  return [
    screw(least((station, k) => mean(head(station), "shift to head") + mean(head(station), "recharge", k))),
    { name: "chamber of each head", resources: [], ticks: harmonic(chamber) },
  ];
}

function stationBounds({ stations, operators }: Scenario, mean: Mean): readonly Bound[] {
  const cycle = [
    "shift to port",
    "travel in",
    "drop",
    "close",
    "cut",
    "travel out",
    "blow",
    "cool",
    "vent",
    "open",
    "remove",
  ];
  const turn = stations.map(({ name, extra }) =>
    [...cycle, ...extra.map((step) => step.name)].reduce((sum, step) => sum + mean(name, step), 0),
  );
  const names = stations.map(({ name }) => name);
  const crew = stations.filter(({ remove }) => remove.by === "operator").map(({ name }) => mean(name, "remove"));
  return [
    { name: "all stations, none ever waiting", resources: names, ticks: harmonic(turn) },
    ...(crew.length === names.length
      ? [{ name: "crew", resources: ["operators"], ticks: Math.min(...crew) / operators }]
      : []),
  ];
}

/** What the fewest parts of a shot take of each server; where every station has one of its own, of all of them together. */
function serverBounds(scenario: Scenario, mean: Mean): readonly Bound[] {
  const { stations, takeaway = [] } = scenario;
  const groups = takeawayGroups(scenario);
  return takeaway.map((server) => {
    const own = groups.filter((group) => group.server === server);
    const ticks = own.map(({ places, station }) => {
      const met = stations.filter((each) => station === null || each.name === station);
      return (Math.min(...met.map(({ cavities }) => cavities)) * mean(places[0]!, server.name)) / places.length;
    });
    return { name: server.name, resources: own.map(({ name }) => name), ticks: harmonic(ticks) };
  });
}

/** The pace of several side by side. */
function harmonic(ticks: readonly number[]): number {
  return 1 / ticks.reduce((sum, each) => sum + 1 / each, 0);
}
