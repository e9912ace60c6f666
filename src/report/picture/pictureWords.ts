// The facts of a scene in words: one sentence for each resource, for readers who do not see the picture.
import type {
  Scene,
  SceneMelt,
  SceneMold,
  SceneOperator,
  SceneRam,
  SceneResource,
  SceneScrew,
  SceneServer,
  SceneStation,
  SceneValve,
} from "#report/scene/scene.ts";
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { grouped, percent } from "#report/words/digits.ts";
import { mass, massOf, temperature } from "#report/scene/sceneQuantities.ts";
import { screenName } from "#report/words/tradeWords.ts";
import { sagWords } from "./parison.ts";

export interface Fact {
  readonly resource: string;
  readonly sentence: string;
}

/** In the order of the melt: screw, rams, valve, stations, then all that takes the parts away. */
export function sceneFacts(scene: Scene, units: UnitSystem): readonly Fact[] {
  return [
    fact(scene.screw, screwWords(scene.screw, units)),
    ...scene.rams.map((ram) => fact(ram, ramWords(ram, units))),
    ...(scene.valve ? [fact(scene.valve, valveWords(scene.valve))] : []),
    ...scene.stations.map((station) => fact(station, stationWords(station, units))),
    ...scene.masks.map((mask) => fact(mask, [])),
    ...scene.operators.map((operator) => ({
      resource: operator.name,
      sentence: `${operator.name}: ${operatorWords(operator)}.`,
    })),
    ...scene.servers.map((server) => ({
      resource: server.name,
      sentence: `${server.name}: ${serverWords(server).join("; ")}.`,
    })),
  ];
}

function fact(resource: SceneResource, details: readonly string[]): Fact {
  const { name, state, cause } = resource;
  const reason = cause === null || cause === state ? "" : ` (${cause})`;
  return { resource: name, sentence: `${screenName(name)}: ${[`${state}${reason}`, ...details].join("; ")}.` };
}

/** "63 of 109 g", or shares where no mass is given. */
export function meltWords({ share, grams, shotGrams }: SceneMelt, units: UnitSystem): string {
  if (grams === null || shotGrams === null) return `${wholePercent(share)} of the shot`;
  return massOf(grams, shotGrams, units);
}

export const wholePercent = (share: number): string => `${(share * 100).toFixed(0)} %`;

function screwWords({ melt, turns }: SceneScrew, units: UnitSystem): readonly string[] {
  const turning = turns ? "the screw turns" : "the screw does not turn";
  return melt ? [turning, `melt before the screw: ${meltWords(melt, units)}`] : [turning];
}

function ramWords({ melt }: SceneRam, units: UnitSystem): readonly string[] {
  return [`melt in the chamber: ${meltWords(melt, units)}`];
}

function valveWords({ openTo, shiftsFor }: SceneValve): readonly string[] {
  if (openTo !== null) return [`only the port of ${openTo} is open`];
  return ["every port is blocked", ...(shiftsFor === null ? [] : [`it shifts for ${shiftsFor}`])];
}

function stationWords({ mold, shotGrams, shots, parts, cavities }: SceneStation, units: UnitSystem): readonly string[] {
  const shot = shotGrams === null ? "" : `, ${mass(shotGrams, units)} a shot`;
  return [
    closedWords(mold),
    ...moldDetails(mold, units),
    `${counted(cavities, "cavity", "cavities")}${shot}`,
    madeWords({ shots, parts }),
  ];
}

function closedWords({ closed }: SceneMold): string {
  if (closed <= 0) return "mold halves apart";
  return closed >= 1 ? "mold halves closed" : `mold halves ${wholePercent(closed)} closed`;
}

export const madeWords = ({ shots, parts }: Pick<SceneStation, "shots" | "parts">): string =>
  `${counted(shots, "shot", "shots")}, ${counted(parts, "part", "parts")}`;

export const counted = (count: number, one: string, many: string): string =>
  `${grouped(count)} ${count === 1 ? one : many}`;

const airWords: Readonly<Record<SceneMold["air"], readonly string[]>> = {
  none: [],
  blowing: ["blow air flows in"],
  held: ["blow air is held"],
  venting: ["blow air flows out"],
};

/** What is known of the content, the most important first; empty for an empty mold. */
function moldDetails(mold: SceneMold, units: UnitSystem): readonly string[] {
  const { content, parison, air, cooling, hottest, travel } = mold;
  const hot = hottest === null ? [] : [`hottest point ${temperature(hottest, units)}`];
  const way = travel === null ? [] : [travelWords(travel)];
  const cooled = cooling === null ? [] : [`${wholePercent(cooling)} of the cooling time over`];
  const grown = content === "parison" && air === "none" ? [`parison ${wholePercent(parison)}`, ...sagWords(mold)] : [];
  const part = content === "part" && air === "none" ? ["part in the mold"] : [];
  return [...cooled, ...airWords[air], ...grown, ...part, ...hot, ...way];
}

const shortAir: Readonly<Record<SceneMold["air"], readonly string[]>> = {
  none: [],
  blowing: ["air flows in"],
  held: ["air is held"],
  venting: ["air flows out"],
};

export const coolingNote = ({ cooling }: SceneMold): readonly string[] =>
  cooling === null ? [] : [`cooling time ${wholePercent(cooling)} over`];

/** The same in few words, without what the picture shows as a clock. */
export function columnNotes(mold: SceneMold, units: UnitSystem): readonly string[] {
  const { content, parison, air, hottest, travel } = mold;
  const hot = hottest === null ? [] : [`hottest ${temperature(hottest, units)}`];
  const grown = content === "parison" && air === "none" ? [`parison ${wholePercent(parison)}`, ...sagWords(mold)] : [];
  const way = travel === null || travel >= 1 ? [] : [travelWords(travel)];
  return [...shortAir[air], ...grown, ...hot, ...way];
}

function travelWords(travel: number): string {
  if (travel <= 0) return "under the die";
  return travel >= 1 ? "at the blow position" : `${percent(travel)} of the way from the die`;
}

export function operatorWords({ state, at, walksTo }: SceneOperator): string {
  if (walksTo !== null) return `walking to ${screenName(walksTo)}`;
  return at === null || at === state ? state : `${state} at ${screenName(at)}`;
}

export function serverWords({ places, before, room, passed }: SceneServer): readonly string[] {
  const states = [...new Set(places.map(({ state }) => state))];
  const shown = states.map((state) => {
    const count = places.filter((place) => place.state === state).length;
    return places.length === 1 ? state : `${count} ${state}`;
  });
  const limit = room === null || room === 0 ? "" : ` of ${grouped(room)}`;
  return [...shown, `${grouped(before)}${limit} wait`, `${grouped(passed)} passed`];
}
