// The changes that are tried on a cell, by name and as the settings that would make them.
import { distributionMean } from "#engine/distributions/moments.ts";
import type { Distribution } from "#engine/distributions/distribution.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { stepNames } from "#cell/words/stepNames.ts";
import { disturbanceWishes } from "./disturbanceWishes.ts";
import { stationGroups, type StationGroup } from "./stationGroups.ts";
import type { Wish } from "./wish.ts";

export function wishesFor(scenario: Scenario): readonly Wish[] {
  const groups = stationGroups(scenario.stations);
  return [
    ...groups.flatMap((group) => stationWishes(group)),
    ...screwWishes(),
    ...valveWishes(scenario),
    ...stationsWishes(scenario, groups),
    ...crewWishes(scenario),
    ...takeawayWishes(scenario),
    ...disturbanceWishes(scenario),
  ];
}

function stationWishes(group: StationGroup): readonly Wish[] {
  const { of, members, paths } = group;
  const only = { only: members.map(({ name }) => name) };
  const [first] = members;
  const at = (rest: string): readonly (readonly string[])[] => paths.map((each) => each.map((path) => path + rest));
  const estimated = (first!.estimated ?? []).includes(stepNames["mold.cool"])
    ? [`.steps.cool=${shorterText(first!.cool, 0.95)}`]
    : [];
  return [
    {
      name: `cooling −5 %${of}`,
      ...only,
      alternatives: [".steps.cool=-5 %", ...estimated].flatMap(at),
      prospect: { steps: ["mold.cool"], of: only.only, share: 0.05 },
    },
    {
      name: `removal −10 %${of}`,
      ...only,
      alternatives: [".steps.remove.time=-10 %", ".steps.remove=-10 %"].flatMap(at),
      prospect: { steps: ["mold.remove"], of: only.only, share: 0.1 },
    },
  ];
}

/** An estimated time has no number in the text that could be moved. */
function shorterText(distribution: Distribution, factor: number): string {
  return `${Number((distributionMean(distribution) * factor).toPrecision(6))} s`;
}

/** A rate of 1.1 and a time of 1 / 1.1 are the same screw; a station may have a value of its own. */
function screwWishes(): readonly Wish[] {
  const settings = ["delivery", "stations.*.delivery"].flatMap((path) => [
    `${path}.plasticatingRate=+10 %`,
    `${path}.recharge=*0.909091`,
  ]);
  const name = "screw 10 % faster";
  const steps = ["screw.recharge", "screw.fillBeyond", "screw.extrude"] as const;
  return [{ name, alternatives: settings.map((each) => [each]), joins: true, prospect: { steps, share: 0.1 } }];
}

const lessShift = 0.1;

function valveWishes({ valve }: Scenario): readonly Wish[] {
  const shift = distributionMean(valve.shift);
  if (shift === 0) return [];
  const steps = ["valve.toPort", "valve.toHead", "valve.toNeutral"] as const;
  const half: Wish = {
    name: "valve shift −50 %",
    alternatives: [["valve.shift=-50 %"]],
    prospect: { steps, share: 0.5 },
  };
  if (shift < 2 * lessShift) return [half];
  const share = lessShift / shift;
  return [{ name: "valve shift −0.1 s", alternatives: [["valve.shift=-0.1 s"]], prospect: { steps, share } }];
}

function stationsWishes({ stations }: Scenario, groups: readonly StationGroup[]): readonly Wish[] {
  return groups.map(({ of, members, entries }) => ({
    name: `one station more${of}`,
    adds: 1,
    alternatives: [
      ...(groups.length === 1 ? [[`stations.count=${stations.length + 1}`]] : []),
      ...entries.map(({ path, count }) => [`${path}.count=${count + 1}`]),
    ],
    prospect: { resources: members.map(({ name }) => name), share: 1 / (members.length + 1) },
  }));
}

function crewWishes({ operators, walk, calendar }: Scenario): readonly Wish[] {
  const shifts = calendar === undefined ? [] : [["calendar.shifts.*.operators=+1"]];
  const more: Wish = {
    name: "one operator more",
    alternatives: [[`crew.operators=${operators + 1}`], ...shifts],
    joins: true,
    prospect: { isCrew: true, share: 1 / (operators + 1) },
  };
  const half: Wish = {
    name: "walks half as long",
    alternatives: [["crew.walk=-50 %"]],
    prospect: { steps: ["crew.walk"], share: 0.5 },
  };
  return [...(operators > 0 ? [more] : []), ...(walk === undefined ? [] : [half])];
}

function takeawayWishes({ takeaway = [] }: Scenario): readonly Wish[] {
  return takeaway.flatMap(({ name, places }): readonly Wish[] => [
    {
      name: `${name} −10 %`,
      alternatives: [[`takeaway.${name}.time=-10 %`]],
      prospect: { steps: ["server.work"], of: [name], share: 0.1 },
    },
    {
      name: `${name}: one place more`,
      alternatives: [[`takeaway.${name}.places=${places + 1}`]],
      prospect: { steps: ["server.work"], of: [name], share: 1 / (places + 1) },
    },
  ]);
}
