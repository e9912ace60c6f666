// Tells what is wrong with an option's value under that option's name, where the scenario only knows settings by number.
import type { Issue, IssueMeaning } from "#foundation/issue.ts";
import type { Options } from "./command.ts";
import { calledSettings } from "./options.ts";

export const optionIssueCodes = {
  "option-value": ["the value of an option is none that it takes", "Write a value that the message names."],
} as const satisfies Readonly<Record<string, IssueMeaning>>;

/** Issues of a reading that was given `settingsOf(options)`; those of the file and of --set stay as they are. */
export function optionIssues(issues: readonly Issue[], options: Options): readonly Issue[] {
  const settings = calledSettings(options);
  return issues.map((issue) => {
    const number = /^--set (\d+)$/.exec(issue.place?.file ?? "")?.[1];
    const setting = settings[Number(number) - 1];
    if (!issue.place || !setting || setting.option.startsWith("--set ")) return issue;
    const { option, text } = setting;
    // Of the call only the value is seen.
    const column = Math.max(1, issue.place.column - (text.indexOf("=") + 1));
    const told = { ...issue, place: { ...issue.place, file: option, column } };
    return isBlank(text) ? withoutValue(told, option) : told;
  });
}

function withoutValue({ expected: _expected, value: _value, ...issue }: Issue, option: string): Issue {
  return { ...issue, message: `${option} has no value.`, remedy: "Give it a value, or leave it out." };
}

/** Nothing behind the equals sign, or nothing between the quotes that a seed is given. */
function isBlank(text: string): boolean {
  return /=[\s"]*$/.test(text);
}
