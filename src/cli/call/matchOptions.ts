// Options of the command that holds a model against a log.
import type { Issue, IssueMeaning } from "#foundation/issue.ts";
import { isQuantity, parseQuantity } from "#foundation/quantity.ts";
import type { OptionSpec, Options } from "./command.ts";

const usual = "5 %";
/** A wider margin would call any model equal. */
const widest = 0.5;

export const marginOption: OptionSpec = {
  flags: "--margin <share>",
  meaning: `the model agrees where its output and cycles lie within this share of the log's (default: ${usual})`,
};
export const renameOption: OptionSpec = {
  flags: "--rename <log=model>",
  meaning: 'a station or step of the log by its name in the model, such as "M1=left" or "demold=remove"; repeatable',
  repeatable: true,
};
export const matchOutOption: OptionSpec = {
  flags: "--out <folder>",
  meaning: "folder for the files that come out (default: reports/<scenario name>-match)",
};

export const matchIssueCodes = {
  "margin-range": ["the margin of a match is no share above 0 and up to 50 %", `Write a share such as ${usual}.`],
  "rename-form": ["a --rename has no two names", 'Write `--rename "name in the log=name in the model"`.'],
  "rename-unknown": [
    "a --rename names nothing of the model",
    "Write a station, resource or step; check FILE shows those.",
  ],
  "rename-unused": ["a --rename names nothing of the log", "Write the name as the log has it."],
  "log-first": [
    "a log stands where a scenario is expected",
    "Name the scenario first, then the log: `blowcell match mine.yaml log.csv`.",
  ],
  "log-times": ["a log has no times, so that nothing an hour can be counted", "Map a column with --column time=NAME."],
  "log-unmatched": [
    "stations of the log are not in the model",
    "Give each its name in the model with --rename, or leave it out.",
  ],
  "log-stretches": [
    "a log has too many stretches without a break of an hour, or too many runs",
    "Match a shorter log; check which column holds the run.",
  ],
  "log-shots": [
    "no station and step of the log is in the model",
    "Give the log's names their names in the model with --rename; check FILE shows those.",
  ],
} as const satisfies Readonly<Record<string, IssueMeaning>>;

export function matchIssue(code: keyof typeof matchIssueCodes, message: string, more: Partial<Issue> = {}): Issue {
  return { code, severity: "error", fate: "file", path: "", message, remedy: matchIssueCodes[code][1], ...more };
}

export function marginOf({ margin = usual }: Options): number | Issue {
  const read = parseQuantity(margin, "share");
  if (isQuantity(read) && read.value > 0 && read.value <= widest) return read.value;
  const message = isQuantity(read) ? `A margin of ${margin} decides nothing.` : read.message;
  return matchIssue("margin-range", message, {
    option: "--margin",
    value: margin,
    expected: "a share above 0 % and up to 50 %",
  });
}

/** Names of the model by those of the log, or what is wrong. */
export function renamesOf({ rename = [] }: Options): {
  readonly renames: ReadonlyMap<string, string>;
  readonly issues: readonly Issue[];
} {
  const pairs = rename.map((text) => text.split(/=(.*)/su).map((part) => part.trim()));
  const issues = pairs.flatMap(([from = "", to = ""], i) =>
    from === "" || to === ""
      ? [
          matchIssue("rename-form", `"${rename[i]!}" does not name two things.`, {
            option: "--rename",
            value: rename[i]!,
          }),
        ]
      : [],
  );
  return { renames: new Map(pairs.map(([from = "", to = ""]) => [from, to])), issues };
}
