// Names the option of the call in an issue that belongs to no line of a file.
import type { Issue, IssueMeaning } from "#foundation/issue.ts";
import type { Options } from "./command.ts";
import { orderSettings } from "./orderOptions.ts";
import type { Variant } from "./variants.ts";

export const optionIssueCodes = {
  "option-value": ["the value of an option is none that it takes", "Write a value that the message names."],
} as const satisfies Readonly<Record<string, IssueMeaning>>;

/** Issues of a reading that was given `settingsOf(options)`; those of the file stay as they are. */
export function optionIssues(issues: readonly Issue[], options: Options, variant?: Variant): readonly Issue[] {
  const ordered = orderSettings(options);
  const { set = [], measured } = options;
  const called = [
    ...ordered,
    ...set.map((text) => ({ option: "--set", text })),
    ...(variant?.set ?? []).map((text) => ({ option: variant?.option ?? "--variant", text })),
  ];
  return issues.map(({ place, ...issue }) => {
    if (place === undefined) return issue;
    if (!place.file.startsWith("--")) return { place, ...issue };
    const number = /^--set (\d+)$/.exec(place.file)?.[1];
    if (number === undefined) return { ...issue, option: place.file };
    const index = Number(number) - 1;
    const found = called[index];
    if (found === undefined) return measuredIssue(issue, measured);
    const { option, text } = found;
    if (index < ordered.length) return { ...issue, value: text, option };
    // A user finds a --set by its path.
    const [path = "", value = ""] = text.split(/=(.*)/s).map((part) => part.trim());
    return { ...(value === "" ? {} : { value }), ...issue, option: `${option} ${path}` };
  });
}

/** Without a known word the reader knows only that keys are needed. */
function measuredIssue(issue: Issue, measured = ""): Issue {
  const found = { ...issue, value: measured, option: "--measured" };
  if (issue.path !== "measured") return found;
  const expected = '"395 shots per h", "790 parts per h" or "cycle 12.2 s"';
  const message = "The measured number does not say what it counts.";
  return { ...found, message, expected, remedy: "Write shots, parts or cycle beside the number." };
}
