// One settled state of a resource, and how a list of them becomes a plain table of numbers.
import type { StateKind } from "#cell/words/stateNames.ts";
import type { StepRole } from "#cell/words/stepNames.ts";

/** A resource is in this state from `seconds` to the next row. */
export interface SceneRow {
  readonly seconds: number;
  readonly state: string;
  readonly kind: StateKind;
  readonly step: string | null;
  readonly role: StepRole | null;
  readonly station: string | null;
  readonly shot: number | null;
  readonly operator: string | null;
  /** The resource at which the process of the step works. */
  readonly at: string | null;
  /** The link that bound its start; -1 where there is none. */
  readonly bound: number;
  /** The role of the step that it belongs to, also while a stop holds that step. */
  readonly heldRole: StepRole | null;
  /** Share of the step that is over as the row begins and as it ends. */
  readonly from: number;
  readonly to: number;
  /** Of what holds melt: the melt before and after the step, as a share of the full shot; in a common chamber milligrams that came or went. */
  readonly low: number;
  readonly high: number;
  /** The station whose shot is the full shot. */
  readonly shotOf: string | null;
  readonly content: MoldContent;
  /** The halves are closed, outside of the steps that close and open them. */
  readonly isShut: boolean;
  readonly air: MoldAir;
}

type MoldContent = "nothing" | "parison" | "part";
type MoldAir = "none" | "blowing" | "held" | "venting";

/** Rows one after the other, each of as many numbers as it has fields; a text is its place among the words. */
export interface PackedRows {
  readonly count: number;
  readonly numbers: Float64Array;
}

const textFields = [
  "state",
  "kind",
  "step",
  "role",
  "station",
  "operator",
  "at",
  "heldRole",
  "shotOf",
  "content",
  "air",
] as const;
const numberFields = ["seconds", "bound", "from", "to", "low", "high"] as const;
const fields = textFields.length + numberFields.length + 2;
const secondsField = textFields.length;
const nothing = -1;

/** Every word once. */
export class WordList {
  readonly words: string[] = [];
  readonly #numbers = new Map<string, number>();

  numberOf(word: string | null): number {
    if (word === null) return nothing;
    const known = this.#numbers.get(word);
    if (known !== undefined) return known;
    this.#numbers.set(word, this.words.length);
    return this.words.push(word) - 1;
  }
}

export function packRows(rows: readonly SceneRow[], words: WordList): PackedRows {
  const numbers = new Float64Array(rows.length * fields);
  let at = 0;
  for (const row of rows) {
    for (const field of textFields) numbers[at++] = words.numberOf(row[field]);
    for (const field of numberFields) numbers[at++] = row[field];
    numbers[at++] = row.shot ?? nothing;
    numbers[at++] = row.isShut ? 1 : 0;
  }
  return { count: rows.length, numbers };
}

export function secondsOf({ numbers }: PackedRows, row: number): number {
  return numbers[row * fields + secondsField]!;
}

/** The row that holds at this time, the first where all come later. */
export function rowNumberAt(rows: PackedRows, seconds: number): number {
  let [first, beyond] = [0, rows.count];
  while (beyond - first > 1) {
    const middle = (first + beyond) >> 1;
    if (secondsOf(rows, middle) <= seconds) first = middle;
    else beyond = middle;
  }
  return first;
}

export function unpackRow({ numbers }: PackedRows, row: number, words: readonly string[]): SceneRow {
  const unpacked: Record<string, string | number | boolean | null> = {};
  let at = row * fields;
  for (const field of textFields) unpacked[field] = words[numbers[at++]!] ?? null;
  for (const field of numberFields) unpacked[field] = numbers[at++]!;
  const shot = numbers[at++]!;
  unpacked["shot"] = shot === nothing ? null : shot;
  unpacked["isShut"] = numbers[at] === 1;
  return unpacked as unknown as SceneRow;
}
