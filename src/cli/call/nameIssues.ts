// Checks the name that a call gives to its results.
import type { Issue, IssueMeaning } from "#foundation/issue.ts";
import type { Options } from "./command.ts";

const longest = 80;

export const nameIssueCodes = {
  "name-form": ["a --name is empty, too long or has control characters", `Write a name of 1 to ${longest} letters.`],
} as const satisfies Readonly<Record<string, IssueMeaning>>;

export function nameIssues({ name }: Options): readonly Issue[] {
  if (name === undefined) return [];
  const letters = Array.from(name.trim()).length;
  if (letters > 0 && letters <= longest && !/\p{Cc}/u.test(name)) return [];
  return [
    {
      code: "name-form",
      severity: "error",
      fate: "file",
      option: "--name",
      path: "",
      message: letters > longest ? `The name has ${letters} letters.` : "The name is empty or has control characters.",
      ...(letters === 0 ? {} : { value: name }),
      expected: `1 to ${longest} letters on one line`,
      remedy: "Write a shorter, plain name.",
    },
  ];
}
