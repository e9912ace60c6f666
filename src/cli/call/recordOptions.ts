// Options of the command that writes a form for a stopwatch.
import type { Issue, IssueMeaning } from "#foundation/issue.ts";
import type { OptionSpec } from "./command.ts";

export const recordOutOption: OptionSpec = {
  flags: "--out <folder>",
  meaning: "folder for the form (default: reports/<scenario name>-record)",
};

export const recordIssueCodes = {
  "record-exists": [
    "the folder has a record already, in which readings may be",
    "Name another folder with --out, or add --replace to write an empty form over it.",
  ],
  "record-reads": [
    "a log stands where a scenario is expected",
    "Read a filled form with `blowcell fit record.csv`, or `blowcell match mine.yaml record.csv`.",
  ],
} as const satisfies Readonly<Record<string, IssueMeaning>>;

export function recordIssue(folder: string): Issue {
  const message = `${folder} has a record.csv already, in which readings may be.`;
  const remedy = recordIssueCodes["record-exists"][1];
  return { code: "record-exists", severity: "error", fate: "file", option: "--out", path: "", message, remedy };
}

/** A filled form was given instead of the scenario. */
export function readBackIssue(file: string): Issue {
  const message = "This command writes a form for a scenario; it reads no log.";
  const remedy = recordIssueCodes["record-reads"][1];
  const place = { file, line: 1, column: 1 };
  return { code: "record-reads", severity: "error", fate: "file", path: "", message, remedy, place };
}
