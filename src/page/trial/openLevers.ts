// The levers of a scenario: the four that matter most in this cell first, then one for every quantity of its text.
import { parseDocument } from "yaml";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { moldLevers, operatorLevers } from "./countLevers.ts";
import type { Lever } from "./lever.ts";
import { leverName } from "./leverName.ts";
import { leverPositions } from "./leverPositions.ts";
import { quantitiesIn } from "./quantities.ts";
import { readGiven, type Tried } from "./readGiven.ts";
import { textWith } from "./textWith.ts";

export interface Levers {
  readonly first: readonly Lever[];
  readonly more: readonly Lever[];
}

const firstLevers = 4;
/** A change that is likely to be possible: these levers are tried for the first places. */
const [lessTime, moreRate] = [0.1, 0.1];

/** Of the text with the settings of the call. */
export function openLevers(tried: Tried): Levers {
  const { scenario } = readGiven(tried);
  if (!scenario) return { first: [], more: [] };
  const content: unknown = parseDocument(textWith(tried)).toJS();
  const moved = quantitiesIn(content).flatMap((quantity): readonly Lever[] => {
    const { paths, written } = quantity;
    const found = paths.join(" ") === "crew.operators" ? undefined : leverPositions(quantity);
    if (found === undefined) return [];
    const text = found.positions[found.present]!.words;
    return [{ id: paths.join(" "), name: leverName(paths), written: text || String(written), isLast: false, ...found }];
  });
  const all = [...moldLevers(content, scenario), ...operatorLevers(scenario, content), ...moved];
  const first = mattering(all, tried, scenario);
  return { first, more: all.filter((lever) => !first.includes(lever)) };
}

const usual = [
  /^stations.*\.steps\.cool$/u,
  /^delivery\.(?:plasticatingRate|recharge)/u,
  /^stations.*count$/u,
  /^crew\.operators$/u,
  /^stations.*\.steps\.remove/u,
  /^takeaway\..*\.time$/u,
  /^valve\.shift/u,
  /^delivery\./u,
];

/** By what a usual change gives in the ideal cycle; equal ones in the order that is usual. */
function mattering(all: readonly Lever[], tried: Tried, scenario: Scenario): readonly Lever[] {
  const before = partTime(scenario);
  const candidates = usual.flatMap((pattern) => all.filter(({ id }) => pattern.test(id)));
  const ranked = [...new Set(candidates)].map((lever) => ({ lever, gain: before - timeWith(lever, tried, before) }));
  const best = ranked.toSorted((one, other) => other.gain - one.gain).slice(0, firstLevers);
  return best.map(({ lever }) => lever);
}

/** Seconds a part, changed to the better side. */
function timeWith({ positions, present }: Lever, tried: Tried, before: number): number {
  const steps = positions.length > 2 * firstLevers * firstLevers ? Math.round(lessTime * present) : 1;
  const both = [present - steps, present + Math.round(steps * (moreRate / lessTime))];
  const times = both.map((place) => {
    const position = positions[place];
    if (position === undefined) return before;
    const { scenario } = readGiven({ ...tried, set: [...tried.set, ...position.settings] });
    return scenario ? partTime(scenario) : before;
  });
  return Math.min(...times);
}

/** Mean seconds a part of the ideal cycle. */
function partTime(scenario: Scenario): number {
  const cavities = scenario.stations.reduce((sum, station) => sum + station.cavities, 0);
  return (idealCycle(scenario).secondsPerShot * scenario.stations.length) / cavities;
}
