// How each state looks in every picture: a hue, a pattern and a letter, so that none of them alone has to be trusted.
import { isOpenTo, stateNames, type StateKind, type StateName } from "#cell/words/stateNames.ts";
import type { StepRole } from "#cell/words/stepNames.ts";

/** `rest` is no loss: nothing waits for a valve in neutral or for a free operator. */
export type Fill =
  | "melt"
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
  | "planned"
  | "pause"
  | "off";

export interface StateLook {
  readonly fill: Fill;
  /** Capitals work, small letters wait. */
  readonly letter: string;
}

const looks: ReadonlyMap<string, StateLook> = new Map<StateName, StateLook>([
  [stateNames.recharging, { fill: "melt", letter: "R" }],
  [stateNames.extrudingParison, { fill: "melt", letter: "R" }],
  [stateNames.extrudingToRegrind, { fill: "wait", letter: "x" }],
  [stateNames.filling, { fill: "melt", letter: "F" }],
  [stateNames.travelIn, { fill: "move", letter: "I" }],
  [stateNames.cut, { fill: "delivery", letter: "D" }],
  [stateNames.travelOut, { fill: "move", letter: "U" }],
  [stateNames.working, { fill: "removal", letter: "M" }],
  [stateNames.packing, { fill: "removal", letter: "K" }],
  [stateNames.walking, { fill: "move", letter: "W" }],
  [stateNames.removal, { fill: "removal", letter: "M" }],
  [stateNames.beingCleared, { fill: "removal", letter: "L" }],
  [stateNames.clearing, { fill: "removal", letter: "L" }],
  [stateNames.repairing, { fill: "removal", letter: "G" }],
  [stateNames.delivering, { fill: "delivery", letter: "D" }],
  [stateNames.parisonDrop, { fill: "delivery", letter: "D" }],
  [stateNames.shifting, { fill: "shift", letter: "S" }],
  [stateNames.valveShifting, { fill: "shift", letter: "S" }],
  [stateNames.valveShiftingToStation, { fill: "shift", letter: "S" }],
  [stateNames.closing, { fill: "move", letter: "C" }],
  [stateNames.blowing, { fill: "air", letter: "B" }],
  [stateNames.cooling, { fill: "cooling", letter: "O" }],
  [stateNames.venting, { fill: "air", letter: "V" }],
  [stateNames.opening, { fill: "move", letter: "P" }],
  [stateNames.removing, { fill: "removal", letter: "M" }],
  [stateNames.holdingShot, { fill: "wait", letter: "h" }],
  [stateNames.awaitingClosedMold, { fill: "wait", letter: "w" }],
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
  [stateNames.awaitingEmptyChamber, { fill: "wait", letter: "e" }],
  [stateNames.awaitingShot, { fill: "wait", letter: "m" }],
  [stateNames.starved, { fill: "wait", letter: "s" }],
  [stateNames.blocked, { fill: "wait", letter: "b" }],
  [stateNames.heating, { fill: "setup", letter: "H" }],
  [stateNames.purging, { fill: "setup", letter: "J" }],
  [stateNames.changeover, { fill: "changeover", letter: "X" }],
  [stateNames.onBreak, { fill: "pause", letter: "p" }],
  [stateNames.neutral, { fill: "rest", letter: "n" }],
  [stateNames.free, { fill: "rest", letter: "f" }],
]);

const fillOfKind: Readonly<Record<string, Fill>> = { waiting: "wait", stopped: "stopped", off: "off" };

/** A state that the table does not know, as a step that the user named, gets its kind's look and the letter E. */
export function stateLook(state: string, kind: StateKind): StateLook {
  if (kind === "working" && isOpenTo(state)) return { fill: "delivery", letter: "D" };
  const known = looks.get(state);
  if (known && (kind === "set-up" || (kind === "working") === isCapital(known.letter))) return known;
  const fill = fillOfKind[kind] ?? "extra";
  return { fill, letter: { wait: "a", stopped: "!", off: "-" }[fill as string] ?? "E" };
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
]);

/** What looks the same on screw, valve, station and operator has one name in a legend. */
export function legendName(state: string): string {
  return isOpenTo(state) ? delivery : (sharedNames.get(state) ?? state);
}
