// How each state looks in every picture: a hue, a pattern and a letter, so that none of them alone has to be trusted.
import { isOpenTo, stateNames, type StateKind, type StateName } from "#cell/words/stateNames.ts";
import type { StepRole } from "#cell/words/stepNames.ts";

/** `wait` is a wait that holds parts back; `rest` costs no output, as of a valve in neutral or a screw that is ahead of the molds. */
export type Fill =
  | "melt"
  | "regrind"
  | "delivery"
  | "shift"
  | "move"
  | "air"
  | "cooling"
  | "removal"
  | "extra"
  | "wait"
  | "rest"
  | "setup"
  | "changeover"
  | "stopped"
  | "good"
  | "poor"
  | "planned"
  | "pause"
  | "off";

export interface StateLook {
  readonly fill: Fill;
  /** Capitals work, small letters wait. */
  readonly letter: string;
}

/** In the order of every legend: melt, mold, takeaway, operators, set-up, then what waits. No two legend entries share a letter. */
const looks: ReadonlyMap<string, StateLook> = new Map<StateName, StateLook>([
  [stateNames.recharging, { fill: "melt", letter: "R" }],
  [stateNames.extrudingParison, { fill: "melt", letter: "E" }],
  [stateNames.filling, { fill: "melt", letter: "A" }],
  [stateNames.shifting, { fill: "shift", letter: "S" }],
  [stateNames.valveShifting, { fill: "shift", letter: "S" }],
  [stateNames.valveShiftingToStation, { fill: "shift", letter: "S" }],
  [stateNames.delivering, { fill: "delivery", letter: "F" }],
  [stateNames.parisonDrop, { fill: "delivery", letter: "F" }],
  [stateNames.travelIn, { fill: "move", letter: "I" }],
  [stateNames.closing, { fill: "move", letter: "C" }],
  [stateNames.cut, { fill: "delivery", letter: "T" }],
  [stateNames.travelOut, { fill: "move", letter: "U" }],
  [stateNames.blowing, { fill: "air", letter: "B" }],
  [stateNames.cooling, { fill: "cooling", letter: "K" }],
  [stateNames.venting, { fill: "air", letter: "V" }],
  [stateNames.opening, { fill: "move", letter: "O" }],
  [stateNames.removal, { fill: "removal", letter: "M" }],
  [stateNames.removing, { fill: "removal", letter: "M" }],
  [stateNames.working, { fill: "removal", letter: "J" }],
  [stateNames.packing, { fill: "removal", letter: "P" }],
  [stateNames.walking, { fill: "move", letter: "W" }],
  [stateNames.beingCleared, { fill: "removal", letter: "L" }],
  [stateNames.clearing, { fill: "removal", letter: "L" }],
  [stateNames.repairing, { fill: "removal", letter: "G" }],
  [stateNames.heating, { fill: "setup", letter: "H" }],
  [stateNames.purging, { fill: "setup", letter: "D" }],
  [stateNames.changeover, { fill: "changeover", letter: "X" }],
  [stateNames.awaitingMelt, { fill: "wait", letter: "m" }],
  [stateNames.awaitingTurn, { fill: "wait", letter: "t" }],
  [stateNames.awaitingValve, { fill: "wait", letter: "v" }],
  [stateNames.noOperatorFree, { fill: "wait", letter: "o" }],
  [stateNames.operatorOnTheWay, { fill: "wait", letter: "y" }],
  [stateNames.awaitingHeatUp, { fill: "setup", letter: "u" }],
  [stateNames.awaitingPurge, { fill: "setup", letter: "j" }],
  [stateNames.screwStopped, { fill: "wait", letter: "d" }],
  [stateNames.valveStopped, { fill: "wait", letter: "z" }],
  [stateNames.awaitingTakeaway, { fill: "wait", letter: "k" }],
  [stateNames.blocked, { fill: "wait", letter: "b" }],
  [stateNames.extrudingToRegrind, { fill: "regrind", letter: "x" }],
  [stateNames.holdingShot, { fill: "rest", letter: "h" }],
  [stateNames.awaitingClosedMold, { fill: "rest", letter: "c" }],
  [stateNames.awaitingShot, { fill: "rest", letter: "w" }],
  [stateNames.awaitingEmptyChamber, { fill: "rest", letter: "e" }],
  [stateNames.starved, { fill: "rest", letter: "s" }],
  [stateNames.neutral, { fill: "rest", letter: "n" }],
  [stateNames.free, { fill: "rest", letter: "f" }],
  [stateNames.onBreak, { fill: "pause", letter: "p" }],
]);

const places: ReadonlyMap<string, number> = new Map([...looks.keys()].map((state, place) => [state, place]));

/** Steps that the user named come before the waits, stops come last. */
export function legendPlace(state: string, kind: StateKind): number {
  const known = places.get(isOpenTo(state) ? stateNames.delivering : state);
  return known ?? (kind === "working" ? places.get(stateNames.changeover)! + 0.5 : looks.size);
}

const fillOfKind: Readonly<Record<string, Fill>> = { waiting: "wait", stopped: "stopped", off: "off" };

/** A state that the table does not know, as a step that the user named, gets its kind's look. */
export function stateLook(state: string, kind: StateKind): StateLook {
  if (kind === "working" && isOpenTo(state)) return { fill: "delivery", letter: "F" };
  const known = looks.get(state);
  if (known && (kind === "set-up" || (kind === "working") === isCapital(known.letter))) return known;
  const fill = fillOfKind[kind] ?? "extra";
  return { fill, letter: { wait: "q", stopped: "!", off: "-" }[fill as string] ?? "Z" };
}

interface Shown {
  readonly state: string;
  readonly kind: StateKind;
}

/** The looks of one chart: steps that the user named have numbers in the order of their first appearance. */
export function looksIn(shown: readonly Shown[]): (one: Shown) => StateLook {
  const own = new Set(
    shown.filter(({ state, kind }) => stateLook(state, kind).fill === "extra").map(({ state }) => state),
  );
  const letters = new Map([...own].map((state, i) => [state, String(i + 1)]));
  return ({ state, kind }) => {
    const look = stateLook(state, kind);
    return { ...look, letter: letters.get(state) ?? look.letter };
  };
}

const isCapital = (letter: string): boolean => letter === letter.toUpperCase();

/** The state that stands for a step in a picture of steps. */
const statesOfSteps: Readonly<Partial<Record<StepRole, StateName>>> = {
  "screw.recharge": stateNames.recharging,
  "screw.fillBeyond": stateNames.filling,
  "screw.extrude": stateNames.extrudingParison,
  "screw.heat": stateNames.heating,
  "screw.purge": stateNames.purging,
  "valve.toPort": stateNames.valveShifting,
  "valve.toHead": stateNames.valveShifting,
  "valve.toNeutral": stateNames.valveShifting,
  "mold.travelIn": stateNames.travelIn,
  "mold.drop": stateNames.parisonDrop,
  "mold.close": stateNames.closing,
  "mold.cut": stateNames.cut,
  "mold.travelOut": stateNames.travelOut,
  "mold.blow": stateNames.blowing,
  "mold.cool": stateNames.cooling,
  "mold.vent": stateNames.venting,
  "mold.open": stateNames.opening,
  "mold.remove": stateNames.removal,
  "server.work": stateNames.working,
  "crew.walk": stateNames.walking,
  "crew.onBreak": stateNames.onBreak,
  "stop.stand": stateNames.stopped,
};

/** Undefined for all other steps, which have only their names. */
export function stateOfStep(role: StepRole | undefined): StateName | undefined {
  return role && statesOfSteps[role];
}

export function stepLook(role: StepRole | undefined): StateLook {
  const kind = role === "stop.stand" ? "stopped" : role === "crew.onBreak" ? "off" : "working";
  return stateLook(stateOfStep(role) ?? "", kind);
}

const delivery = `${stateNames.delivering}, ${stateNames.parisonDrop}`;
const sharedNames: ReadonlyMap<string, string> = new Map<StateName, string>([
  [stateNames.delivering, delivery],
  [stateNames.parisonDrop, delivery],
  [stateNames.shifting, stateNames.valveShifting],
  [stateNames.valveShiftingToStation, stateNames.valveShifting],
  [stateNames.removing, stateNames.removal],
  [stateNames.clearing, stateNames.beingCleared],
]);

/** What looks the same on screw, valve, station and operator has one name in a legend. */
export function legendName(state: string): string {
  return isOpenTo(state) ? delivery : (sharedNames.get(state) ?? state);
}
