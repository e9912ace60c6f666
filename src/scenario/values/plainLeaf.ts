// The leaves that are no quantities: whole numbers, choices, text.
import { didYouMean } from "#foundation/didYouMean.ts";
import type { Fault } from "#foundation/fault.ts";
import { leaf, refused, wrongType, type Leaf } from "./leaf.ts";

export function wholeNumber(least: number, most: number, code = "out-of-range"): Leaf<number> {
  const expected = `a whole number from ${least} to ${most}`;
  return leaf({
    expected,
    json: { type: "integer", minimum: least, maximum: most },
    read: (written) => {
      const remedy = `Write ${expected}.`;
      if (typeof written === "string" && /^\s*-?\d+\s*$/u.test(written)) {
        return refused({ ...wrongType(written, expected), remedy: `Write \`${written.trim()}\` without quotes.` });
      }
      if (typeof written === "string" || (typeof written === "number" && !Number.isInteger(written))) {
        return refused({ code: "not-whole", message: `\`${written}\` is not a whole number.`, expected, remedy });
      }
      if (typeof written !== "number") return refused(wrongType(written, expected));
      if (written >= least && written <= most) return { value: written };
      return refused({ code, message: `${written} is outside ${least} to ${most}.`, expected, remedy });
    },
  });
}

/** One of a few words, each with its meaning. */
export function oneOf<Choice extends string>(meanings: Readonly<Record<Choice, string>>): Leaf<Choice> {
  return renamedChoice({}, meanings);
}

/** `old`: words of earlier versions, each with the choice that replaces it; they are read with a hint and are not in the schema. */
export function renamedChoice<Choice extends string>(
  old: Readonly<Record<string, NoInfer<Choice>>>,
  meanings: Readonly<Record<Choice, string>>,
): Leaf<Choice> {
  const choices = Object.keys(meanings) as Choice[];
  const expected =
    choices.length === 1 ? `\`${choices[0]}\`` : `one of ${choices.map((each) => `\`${each}\``).join(", ")}`;
  return leaf({
    expected,
    json: { anyOf: choices.map((choice) => ({ const: choice, description: meanings[choice] })) },
    read: (written) => {
      if (typeof written !== "string") return refused(wrongType(written, expected));
      const known = choices.find((each) => each === written);
      if (known !== undefined) return { value: known };
      const current = Object.hasOwn(old, written) ? old[written] : undefined;
      if (current !== undefined) return { value: current, hint: oldWord(written, current) };
      const meant = didYouMean(written, choices);
      const remedy = meant === undefined ? `Write ${expected}.` : `Did you mean \`${meant}\`?`;
      return refused({ code: "unknown-choice", message: `"${written}" is not known here.`, expected, remedy });
    },
  });
}

function oldWord(written: string, current: string): Fault {
  const message = `\`${written}\` is an old word for \`${current}\`.`;
  return { code: "old-word", message, expected: `\`${current}\``, remedy: `Write \`${current}\`.` };
}

/** YAML 1.2 has only `true` and `false`; users also write `yes` and `no`. */
export const truth: Leaf<boolean> = leaf({
  expected: "`yes` or `no`",
  json: { anyOf: [{ type: "boolean" }, { enum: ["yes", "no"] }], examples: ["yes"] },
  read: (written) => {
    if (typeof written === "boolean") return { value: written };
    if (written === "yes" || written === "no") return { value: written === "yes" };
    return refused(wrongType(written, "`yes` or `no`"));
  },
});

/** Text of one line; `example` is shown for other values. */
export function text(example: string): Leaf<string> {
  const expected = `a text such as \`${example}\``;
  return leaf({
    expected,
    json: { type: "string", pattern: String.raw`\S`, examples: [example] },
    read: (written) => {
      if (typeof written === "number" || typeof written === "boolean") {
        return refused({ ...wrongType(written, expected), remedy: `Put it in quotes: \`"${written}"\`.` });
      }
      if (typeof written !== "string") return refused(wrongType(written, expected));
      if (written.trim() !== "") return { value: written.trim() };
      return refused({ code: "value-missing", message: "The text is empty.", expected, remedy: `Write ${expected}.` });
    },
  });
}

/** Text of a fixed form, such as a time of day; `form` says which. */
export function patterned(pattern: string, form: string, example: string): Leaf<string> {
  const expected = `${form} such as \`${example}\``;
  const matches = new RegExp(pattern, "u");
  return leaf({
    expected,
    json: { title: form, type: "string", pattern },
    read: (written) => {
      if (typeof written !== "string") return refused(wrongType(written, expected));
      if (matches.test(written)) return { value: written };
      return refused({
        code: "wrong-form",
        message: `"${written}" has another form.`,
        expected,
        remedy: `Write ${expected}.`,
      });
    },
  });
}
