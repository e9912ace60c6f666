// Names that users give, kept apart from the words that tables already use.
import { leaf, refused, wrongType, type Leaf, type LeafFault, type LeafReading } from "./leaf.ts";

/** The cell's own resources: a station of that name could not be distinguished in a table. */
const reservedForStations = [
  "all",
  "cell",
  "clamp",
  "crew",
  "operator",
  "operators",
  "plasticator",
  "ram",
  "screw",
  "selector valve",
  "takeaway",
  "valve",
];

/** The cycle's steps and the states of a station, as tables name them. */
const reservedForSteps = `drop, close, blow, cool, vent, open, remove, recharge, travel in, cut, travel out,
  awaiting melt, awaiting valve, awaiting turn, valve shifting, valve shifting to it, parison drop, closing, blowing,
  cooling, venting, opening, removal, awaiting takeaway, being cleared, changeover, stopped, off shift,
  awaiting heat-up, awaiting purge, screw stopped, valve stopped, no operator free,
  operator on the way, heating, purging, repairing, on break,
  shift to port, shift to neutral, let go, clear, give up the drop, give up the parison, give up the shot`.split(
  /,\s+/u,
);

/** Tables number the operators, and call what belongs to a station after it. */
const tableName = "^(?:operator [0-9]+|(?:ram|head|mask) of .*)$";

/** Marks that turn the direction of writing, and separators of lines: a table would show another name than was written. */
const marks = String.raw`\u200e\u200f\u2028-\u202e\u2066-\u2069`;

// Dots, brackets and equals signs belong to paths such as `stations.left.steps.cool=8 s`; a name begins with a letter.
const form = String.raw`^\p{L}(?:[^.[\]="\p{Cc}${marks}]*[^.[\]="\p{Cc}${marks}\s])?$`;

/** Matches most names without Unicode classes. */
const plainName = /^[A-Za-z](?:[\w -]*\w)?$/;

function nameLeaf(example: string, reserved: readonly string[]): Leaf<string> {
  const expected = `a name such as \`${example}\``;
  return leaf({
    expected,
    json: {
      type: "string",
      title: "a name",
      pattern: form,
      maxLength: 60,
      not: { anyOf: [{ enum: reserved }, { pattern: tableName }] },
    },
    read: (written) => readName(written, example, reserved),
  });
}

function readName(written: unknown, example: string, reserved: readonly string[]): LeafReading<string> {
  const expected = `a name such as \`${example}\``;
  if (typeof written !== "string") {
    const remedy = `Begin it with a letter: \`${example}\`.`;
    return refused({ ...wrongType(written, expected), remedy });
  }
  const isName = plainName.test(written) || new RegExp(form, "u").test(written);
  if (!isName || written.length > 60) {
    const remedy =
      "Begin with a letter; no dots, brackets, quotes, equals signs or marks of direction; at most 60 characters.";
    return refused({ code: "name-form", message: `"${written}" cannot be a name.`, expected, remedy });
  }
  if (!reserved.includes(written) && !new RegExp(tableName, "u").test(written)) return { value: written };
  const message = `"${written}" already means something in the tables.`;
  const remedy = `Choose another name, such as \`${example}\`.`;
  return refused({ code: "name-reserved", message, expected, remedy });
}

export const stationName = nameLeaf("left", reservedForStations);
export const stepName = nameLeaf("pin down", reservedForSteps);

/** Of what belongs to a station tables speak as `mask of left`. */
const reservedForServers = [
  ...reservedForStations,
  "mask",
  "head",
  "mold",
  "stations",
  "die zone",
  ...reservedForSteps,
];

/** The fault of a name that is a key of `takeaway`; undefined for a valid name. */
export function faultOfServerName(name: string): LeafFault | undefined {
  const reading = readName(name, "trimmer", reservedForServers);
  return "faults" in reading ? reading.faults[0] : undefined;
}
