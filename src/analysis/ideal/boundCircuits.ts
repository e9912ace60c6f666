// Lower bounds of the period for any order of different stations: the screw, all stations and the crew without waits.
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import { hasRole } from "#cell/words/cellTable.ts";
import { headOf, PLASTICATOR, VALVE } from "#cell/words/cycleNames.ts";
import type { StepRole } from "#cell/words/stepNames.ts";
import { takeawayGroups } from "#scenario/resolving/takeawayGroups.ts";
import type { ContinuousSpec, Scenario, StationSpec } from "#scenario/scenario.ts";
import type { CircuitOwner, IdealCircuit } from "./idealCircuit.ts";
import { planOf } from "./planOf.ts";
import { CREW } from "./takeawayOwners.ts";

interface Bound {
  readonly name: string;
  readonly owner: CircuitOwner | null;
  readonly resources: readonly string[];
  readonly ticks: number;
}

/** Mean ticks of the steps of a process with this role; `distribution` selects one where a step has several. */
type Mean = (process: string, role: StepRole, distribution?: number) => number;

/** Bounds at mean times, the largest first; the true period may be longer. */
export function boundCircuits(scenario: Scenario): readonly IdealCircuit[] {
  const { program, processes, steps } = planOf(scenario);
  const mean: Mean = (process, role, distribution = 0) =>
    program.rows
      .filter((row, i) => hasRole(steps[i]!, role) && processes[row.process]!.name === process)
      .map((row) => (row.draw?.samplers[distribution] ?? row.draw?.samplers[0])?.meanTicks ?? 0)
      .reduce((sum, ticks) => sum + ticks, 0);
  const bounds = [
    ...screwBounds(scenario, mean),
    ...stationBounds(scenario, mean),
    ...serverBounds(scenario, mean),
  ].toSorted((a, b) => b.ticks - a.ticks);
  return bounds.map(({ name, owner, resources, ticks }, i) => ({
    name,
    owner,
    steps: [],
    resources,
    seconds: ticks / TICKS_PER_SECOND,
    shots: 1,
    secondsPerShot: ticks / TICKS_PER_SECOND,
    slackSeconds: (bounds[0]!.ticks - ticks) / TICKS_PER_SECOND,
    critical: i === 0,
  }));
}

/** The steps that two molds never do at the same time. */
const dieZones: Readonly<Record<ContinuousSpec["dieZone"], readonly (readonly StepRole[])[]>> = {
  exclusive: [["mold.travelIn", "mold.close", "mold.cut", "mold.travelOut"]],
  shared: [
    ["mold.travelIn", "mold.close", "mold.cut"],
    ["mold.close", "mold.cut", "mold.travelOut"],
  ],
};

/** The time a shot of each kind of melt delivery if every shot were the fastest one. */
function screwBounds(scenario: Scenario, mean: Mean): readonly Bound[] {
  const { stations, delivery } = scenario;
  const least = (of: (station: StationSpec, k: number) => number): number => Math.min(...stations.map(of));
  const back = mean(VALVE, "valve.toNeutral");
  const screw = (ticks: number): Bound => ({
    name: `${PLASTICATOR}, every shot the fastest`,
    owner: { kind: "screw" },
    resources: [PLASTICATOR],
    ticks,
  });
  if (delivery.kind === "continuous") {
    const ticks = Math.max(
      ...dieZones[delivery.dieZone].map((zone) =>
        least(({ name }) => zone.reduce((sum, role) => sum + mean(name, role), 0)),
      ),
    );
    const growing = least((_, k) => mean(PLASTICATOR, "screw.extrude", k));
    return [screw(growing), { name: "die zone", owner: { kind: "die zone" }, resources: [], ticks }];
  }
  if (delivery.kind === "reciprocating-screw") {
    const turn = ({ name }: StationSpec, k: number): number =>
      mean(PLASTICATOR, "screw.recharge", k) + mean(name, "mold.drop") + mean(name, "valve.toPort") + back;
    return [screw(least(turn))];
  }
  if (delivery.accumulator === "common") {
    const ticks = least(({ name }) => mean(name, "valve.toPort") + mean(name, "mold.drop") + back);
    const recharge = least((_, k) => mean(PLASTICATOR, "screw.recharge", k) + mean(PLASTICATOR, "screw.fillBeyond", k));
    return [screw(recharge), { name: VALVE, owner: { kind: "valve" }, resources: [VALVE], ticks }];
  }
  const head = ({ name }: StationSpec): string => headOf(name);
  const chamber = stations.map(
    (station, k) => mean(head(station), "screw.recharge", k) + mean(station.name, "mold.drop"),
  );
  return [
    screw(least((station, k) => mean(head(station), "valve.toHead") + mean(head(station), "screw.recharge", k))),
    { name: "chamber of each head", owner: { kind: "chambers" }, resources: [], ticks: harmonic(chamber) },
  ];
}

/** The steps of a station's turn with any kind of melt delivery. */
const turn: readonly StepRole[] = [
  "valve.toPort",
  "mold.travelIn",
  "mold.drop",
  "mold.close",
  "mold.cut",
  "mold.travelOut",
  "mold.blow",
  "mold.cool",
  "mold.vent",
  "mold.open",
  "mold.remove",
  "mold.own",
];

function stationBounds({ stations, operators }: Scenario, mean: Mean): readonly Bound[] {
  const turns = stations.map(({ name }) => turn.reduce((sum, role) => sum + mean(name, role), 0));
  const names = stations.map(({ name }) => name);
  const removals = stations
    .filter(({ remove }) => remove.by === "operator")
    .map(({ name }) => mean(name, "mold.remove"));
  const crew: Bound = {
    name: CREW,
    owner: { kind: "crew" },
    resources: ["operators"],
    ticks: Math.min(...removals) / operators,
  };
  return [
    {
      name: "all stations, without waits",
      owner: { kind: "stations" },
      resources: names,
      ticks: harmonic(turns),
    },
    ...(removals.length === names.length ? [crew] : []),
  ];
}

/** The time of each server for the smallest shot; where every station has its own server, the time of all of them together. */
function serverBounds(scenario: Scenario, mean: Mean): readonly Bound[] {
  const { stations, takeaway = [] } = scenario;
  const groups = takeawayGroups(scenario);
  return takeaway.map((server) => {
    const own = groups.filter((group) => group.server === server);
    const ticks = own.map(({ places, station }) => {
      const met = stations.filter((each) => station === null || each.name === station);
      return (Math.min(...met.map(({ cavities }) => cavities)) * mean(places[0]!, "server.work")) / places.length;
    });
    const { name } = server;
    return {
      name,
      owner: server.perStation === true ? null : { kind: "server", name },
      resources: own.map((group) => group.name),
      ticks: harmonic(ticks),
    };
  });
}

/** The time a shot of several resources in parallel. */
function harmonic(ticks: readonly number[]): number {
  return 1 / ticks.reduce((sum, each) => sum + 1 / each, 0);
}
