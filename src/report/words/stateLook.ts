// How each state looks in every picture: a hue, a pattern and a letter, so that none of them alone has to be trusted.

/** `rest` is no loss: nobody waits for the sake of a valve in neutral or of a free operator. */
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

const looks: Readonly<Record<string, StateLook>> = {
  recharging: { fill: "melt", letter: "R" },
  "extruding a parison": { fill: "melt", letter: "R" },
  "extruding to regrind": { fill: "wait", letter: "x" },
  filling: { fill: "melt", letter: "F" },
  "filling beyond the shot": { fill: "melt", letter: "F" },
  "travel in": { fill: "move", letter: "I" },
  cut: { fill: "delivery", letter: "D" },
  "travel out": { fill: "move", letter: "U" },
  working: { fill: "removal", letter: "M" },
  packing: { fill: "removal", letter: "K" },
  walking: { fill: "move", letter: "W" },
  removal: { fill: "removal", letter: "M" },
  "being cleared": { fill: "removal", letter: "L" },
  clearing: { fill: "removal", letter: "L" },
  repairing: { fill: "removal", letter: "G" },
  delivering: { fill: "delivery", letter: "D" },
  "parison drop": { fill: "delivery", letter: "D" },
  shifting: { fill: "shift", letter: "S" },
  "valve shifting": { fill: "shift", letter: "S" },
  "valve shifting to it": { fill: "shift", letter: "S" },
  closing: { fill: "move", letter: "C" },
  blowing: { fill: "air", letter: "B" },
  cooling: { fill: "cooling", letter: "O" },
  venting: { fill: "air", letter: "V" },
  opening: { fill: "move", letter: "P" },
  removing: { fill: "removal", letter: "M" },
  "holding a full shot": { fill: "wait", letter: "h" },
  "waiting for the mold to close": { fill: "wait", letter: "w" },
  "awaiting melt": { fill: "wait", letter: "m" },
  "awaiting turn": { fill: "wait", letter: "t" },
  "awaiting valve": { fill: "wait", letter: "v" },
  "awaiting removal": { fill: "wait", letter: "r" },
  "awaiting takeaway": { fill: "wait", letter: "k" },
  "waiting for an empty chamber": { fill: "wait", letter: "e" },
  "waiting for melt": { fill: "wait", letter: "m" },
  starved: { fill: "wait", letter: "s" },
  blocked: { fill: "wait", letter: "b" },
  heating: { fill: "setup", letter: "H" },
  purging: { fill: "setup", letter: "J" },
  changeover: { fill: "changeover", letter: "X" },
  "on break": { fill: "pause", letter: "p" },
  neutral: { fill: "rest", letter: "n" },
  free: { fill: "rest", letter: "f" },
};

const fillOfKind: Readonly<Record<string, Fill>> = { waiting: "wait", stopped: "stopped", off: "off" };
const openTo = "open to ";

/** A state that the table does not know, as a step that the user named, gets its kind's look and the letter E. */
export function stateLook(state: string, kind: string): StateLook {
  if (kind === "working" && state.startsWith(openTo)) return { fill: "delivery", letter: "D" };
  const known = Object.hasOwn(looks, state) ? looks[state] : undefined;
  if (known && (kind === "working") === (known.letter === known.letter.toUpperCase())) return known;
  const fill = fillOfKind[kind] ?? "extra";
  return { fill, letter: { wait: "a", stopped: "!", off: "-" }[fill as string] ?? "E" };
}

const delivery = "delivering, parison drop";
const shift = "valve shifting";
const sharedNames: Readonly<Record<string, string>> = {
  delivering: delivery,
  "parison drop": delivery,
  shifting: shift,
  "valve shifting to it": shift,
  removing: "removal",
};

/** What looks the same on screw, valve, station and operator has one name in a legend. */
export function legendName(state: string): string {
  if (state.startsWith(openTo)) return delivery;
  return Object.hasOwn(sharedNames, state) ? (sharedNames[state] ?? state) : state;
}
