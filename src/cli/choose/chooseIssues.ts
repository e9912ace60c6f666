// The issues of a call that chooses, each with its meaning and remedy.
import type { Issue, IssueMeaning } from "#foundation/issue.ts";

export const chooseIssueCodes = {
  "choose-one": [
    "there is only one layout to choose from",
    "Name another file, write `options:` in the scenario, or add --variant or --vary.",
  ],
  "choose-many": ["there are more layouts to choose from than one call takes", "Choose from at most 500 layouts."],
  "choose-vary": ["points of --vary stand beside other layouts", "Give --vary with one file and without --variant."],
  "by-unknown": ["`--by` names no measure that all layouts have", "Write one of the measures that the message names."],
  "by-costs": [
    "layouts are to be chosen by their cost, and their costs have different items",
    "Give all layouts the same keys of `costs`.",
  ],
  "worthwhile-form": [
    "a `--worthwhile` is no difference in the measure that decides",
    "Write a number in the unit of the measure, or a share such as `1 %`.",
  ],
  "need-form": ["a `--need` is not a number of parts in a time", 'Write `--need "200000 parts in 5 d"`.'],
  "need-length": ["a run has two lengths", "Leave out --length: with --need a run is as long as its time."],
  "chance-alone": ["a `--chance` stands without a need", "Add `--need`, or leave --chance out."],
  "best-alone": ["an option of the choice stands without `--best`", "Add `--best`, or leave the option out."],
  "best-whole": ["an option does not go with `--best`", "Leave the option out, or leave out `--best`."],
} as const satisfies Readonly<Record<string, IssueMeaning>>;

interface Said extends Partial<Pick<Issue, "value" | "expected" | "remedy">> {
  readonly option?: string;
}

/** The general remedy where none is said. */
export function chooseIssue(code: keyof typeof chooseIssueCodes, message: string, said: Said = {}): Issue {
  const [, remedy] = chooseIssueCodes[code];
  return { code, severity: "error", path: "", message, remedy, fate: "file", ...said };
}
