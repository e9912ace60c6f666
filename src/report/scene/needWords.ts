// What a resource lacks at a moment, in one sentence with the numbers of that moment.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { shownUnit } from "#report/words/shownUnits.ts";
import { namesOf, ownerName } from "#report/words/tradeWords.ts";
import { stateNames } from "#cell/words/stateNames.ts";
import type { Scene, SceneMelt, SceneResource, SceneServer, SceneStation } from "./scene.ts";
import type { SceneRecord } from "./sceneRecord.ts";

interface Asked {
  readonly record: SceneRecord;
  readonly scene: Scene;
  readonly resource: SceneResource;
  readonly units: UnitSystem;
}

type Need = (asked: Asked) => string | null;

const needs: Readonly<Record<string, Need>> = {
  [stateNames.awaitingMelt]: melt,
  [stateNames.awaitingTurn]: turn,
  [stateNames.awaitingValve]: valveInNeutral,
  [stateNames.awaitingHeatUp]: because,
  [stateNames.awaitingPurge]: because,
  [stateNames.screwStopped]: because,
  [stateNames.valveStopped]: because,
  [stateNames.noOperatorFree]: operator,
  [stateNames.operatorOnTheWay]: walk,
  [stateNames.awaitingTakeaway]: room,
  [stateNames.blocked]: room,
  [stateNames.starved]: () => "It needs a part.",
  [stateNames.holdingShot]: openMold,
  [stateNames.extrudingToRegrind]: moldUnderDie,
  [stateNames.awaitingClosedMold]: closedMold,
  [stateNames.awaitingEmptyChamber]: emptyChamber,
  [stateNames.neutral]: neutral,
  [stateNames.awaitingShot]: ({ scene }) => `It needs melt from the screw: ${doing(scene.screw)}.`,
  [stateNames.stopped]: repair,
};

/** Null where nothing is needed. */
export function needWords(asked: Asked): string | null {
  return needs[asked.resource.state]?.(asked) ?? null;
}

const whole = (value: number): string => String(Math.round(value));

/** "63 of 109 g"; without masses a share. A shot that is nearly full is not called full. */
function gathered({ share, grams, shotGrams }: SceneMelt, units: UnitSystem): string {
  if (grams === null || shotGrams === null) return `${whole(Math.min(share < 1 ? 99 : 100, share * 100))} %`;
  const { symbol, value } = shownUnit("g", shotGrams, units);
  const [held, shot] = [value(grams), value(shotGrams)];
  // Ounces and pounds are larger than grams.
  const digits = units === "us" ? 2 : 0;
  const isNear = held.toFixed(digits) === shot.toFixed(digits) && share < 1;
  return `${held.toFixed(isNear ? digits + 1 : digits)} of ${shot.toFixed(digits)} ${symbol}`;
}

/** States that are no verbs. */
const verbs: Readonly<Record<string, string>> = {
  [stateNames.removal]: "has its parts removed",
  [stateNames.parisonDrop]: "gets its parison",
  [stateNames.valveShiftingToStation]: "gets the next shot",
  [stateNames.travelIn]: "travels in",
  [stateNames.cut]: "cuts its parison off",
  [stateNames.travelOut]: "travels out",
  [stateNames.stopped]: "is stopped",
  [stateNames.offShift]: "is off shift",
  [stateNames.changeover]: "is changed over",
  [stateNames.noOperatorFree]: "waits for an operator",
  [stateNames.operatorOnTheWay]: "waits for an operator on the way",
  [stateNames.screwStopped]: "waits for the screw, which is stopped",
  [stateNames.valveStopped]: "waits for the valve, which is stopped",
};

/** "the screw is recharging". */
function doing({ name, state }: SceneResource): string {
  const verb = verbs[state] ?? (/^\S+ing\b/u.test(state) ? `is ${state}` : `is in its step "${state}"`);
  return `${ownerName(name)} ${verb}`;
}

function melt({ scene, resource, units }: Asked): string {
  if (scene.delivery === "continuous") {
    return `It needs a parison of full length: ${whole(Math.min(99, (scene.screw.parison ?? 0) * 100))} % has grown.`;
  }
  const next = servedNow(scene);
  if (next !== undefined && next !== resource.name) return `It needs the next full shot: this one goes to ${next}.`;
  const held = scene.screw.melt ?? scene.rams.find((ram) => ram.of === resource.name || ram.of === null)?.melt;
  return held ? `It needs a full shot: ${gathered(held, units)}.` : "It needs a full shot.";
}

/** The station that gets the shot that is full; with a chamber of its own each station has its own shot. */
function servedNow({ delivery, valve, stations }: Scene): string | undefined {
  if (delivery === "accumulator-head") return undefined;
  const shifts = stations.find(({ role, kind }) => role === "valve.toPort" && kind === "working");
  return valve?.openTo ?? shifts?.name;
}

function turn({ record, scene, resource }: Asked): string {
  const others = scene.stations.filter(({ name }) => name !== resource.name);
  if (scene.delivery === "continuous") {
    const there = others.filter(({ role, mold }) => isAtDie(mold.travel, role)).map(({ name }) => name);
    return there.length > 0 ? `It needs the die zone: ${namesOf(there)} ${is(there)} there.` : "It needs the die zone.";
  }
  if (record.dispatch !== "alternate") return "It needs its turn: another station is served first.";
  const next = nextInTurn(record, scene);
  return next && next.name !== resource.name
    ? `It needs its turn: first comes ${next.name}; ${doing(next)}.`
    : "It needs its turn.";
}

const isAtDie = (travel: number | null, role: SceneStation["role"]): boolean =>
  travel !== null && (travel < 1 || role === "mold.travelIn");

const is = (names: readonly string[]): string => (names.length === 1 ? "is" : "are");

/** The station after the one that has had the last shot. */
function nextInTurn({ stations }: SceneRecord, scene: Scene): SceneStation | undefined {
  const shot = ({ counts: { shots } }: SceneRecord["stations"][number]): number =>
    shots.seconds.findLast((each) => each <= scene.seconds) ?? -1;
  const times = stations.map(shot);
  const latest = Math.max(...times);
  return latest < 0 ? undefined : scene.stations[(times.indexOf(latest) + 1) % stations.length];
}

function valveInNeutral({ scene }: Asked): string {
  const state = scene.valve;
  if (state?.openTo) return `It needs the valve in neutral: it is open to ${state.openTo}.`;
  return "It needs the valve in neutral: the valve is shifting.";
}

function because({ resource }: Asked): string {
  return `It needs its shot, and ${resource.cause}.`;
}

function operator({ scene }: Asked): string {
  const words = scene.operators.map(({ name, state, at, walksTo }) => {
    if (walksTo !== null) return `${name} walks to ${ownerName(walksTo)}`;
    return at === null ? `${name} is ${state}` : `${name} is at ${ownerName(at)}`;
  });
  return `It needs an operator: ${listed(words)}.`;
}

const mostListed = 3;

function listed(words: readonly string[]): string {
  return words.length > mostListed ? `all ${words.length} are busy` : words.join(", ");
}

function walk({ scene, resource }: Asked): string {
  const coming = scene.operators.find(({ walksTo }) => walksTo === resource.name);
  return coming ? `It needs ${coming.name}, who walks to it.` : "It needs the operator, who walks to it.";
}

function room({ record, scene, resource }: Asked): string {
  const own = record.servers.findIndex(({ places }) => places.includes(resource.name));
  const isMine = (station: string | null): boolean => station === null || station === resource.station;
  const next = record.servers.findIndex(({ station }, i) => i > own && isMine(station));
  const isMold = own === -1 && record.resources.some(({ name, kind }) => name === resource.name && kind === "station");
  const hasMask = scene.masks.length > 0;
  if (isMold && hasMask) return "It needs an empty mask: the mask still holds the parts before.";
  const server = scene.servers[next];
  return server ? `It needs room at ${server.name}: ${takenPlaces(server)}.` : "It needs room for its parts.";
}

function takenPlaces({ before, room: most, places: all }: SceneServer): string {
  const busy = `${all.length === 1 ? "its place is" : `all ${all.length} places are`} taken`;
  return most === null || most === 0 ? busy : `${busy}, and ${before} of ${most} parts wait before it`;
}

function openMold({ scene, resource }: Asked): string {
  const ram = scene.rams.find(({ name }) => name === resource.name);
  const mine = ram && ram.of !== null ? scene.stations.filter(({ name }) => name === ram.of) : scene.stations;
  if (scene.delivery === "accumulator-head" && !ram)
    return "It needs a head to fill: every head is full or has its turn.";
  if (scene.delivery === "accumulator-common" && !ram) return "It needs room in the chamber: it is full.";
  return mine.length > mostListed
    ? `It needs an open and empty mold: all ${mine.length} are in their cycle.`
    : `It needs an open and empty mold: ${mine.map(doing).join(", ")}.`;
}

function moldUnderDie({ scene }: Asked): string {
  const { stations } = scene;
  if (stations.length > mostListed) return `It needs a mold under the die: none of the ${stations.length} is there.`;
  return `It needs a mold under the die: ${stations.map(doing).join(", ")}.`;
}

/** The mold that was filled last hangs with its parison open. */
function closedMold({ scene }: Asked): string {
  const last = scene.stations.find(({ mold }) => mold.content === "parison" && mold.closed < 1);
  return last ? `It needs a closed mold: ${doing(last)}.` : "It needs a closed mold.";
}

function emptyChamber({ scene, resource, units }: Asked): string {
  const ram = scene.rams.find(({ of }) => of === resource.station);
  return ram
    ? `It needs the head of ${ram.of} empty: ${gathered(ram.melt, units)} ${left(ram.melt)}.`
    : "It needs an empty head.";
}

const left = ({ grams }: SceneMelt): string => (grams === null ? "of its shot is left" : "are left");

function neutral({ scene, units }: Asked): string | null {
  if (scene.delivery === "accumulator-head") return "It needs a head to fill.";
  const { melt: held } = scene.screw;
  const ready = held ?? scene.rams[0]?.melt;
  if (ready && ready.share < 1) return `It needs a full shot: ${gathered(ready, units)}.`;
  return "It needs an open and empty mold.";
}

function repair({ scene, resource }: Asked): string {
  const at = scene.operators.find((each) => each.state === stateNames.repairing && each.at === resource.name);
  return at ? `It needs the end of the stop: ${at.name} repairs it.` : "It needs the end of the stop.";
}
