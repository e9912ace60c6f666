// Checks how many layouts a call of `compare` names, and what it compares them with.
import { againstWords } from "#analysis/study/against.ts";
import type { Options } from "#cli/call/command.ts";
import type { Issue, IssueMeaning } from "#foundation/issue.ts";
import type { Scenario } from "#scenario/scenario.ts";

export const layoutIssueCodes = {
  "compare-many": ["more layouts are compared than one call takes", "Compare at most 50 layouts in one call."],
  "against-unknown": [
    "`--against` names no layout of the call",
    "Write first, previous, all or the name of a compared layout.",
  ],
} as const satisfies Readonly<Record<string, IssueMeaning>>;

/** The intervals of more layouts would be wide, and their table unreadable. */
const mostLayouts = 50;

export function layoutIssues(scenarios: readonly Scenario[], { against }: Options): readonly Issue[] {
  const names: readonly string[] = [...againstWords, ...scenarios.map(({ name }) => name)];
  const many =
    scenarios.length > mostLayouts
      ? [issueOf("compare-many", `${scenarios.length} layouts are compared, the most are ${mostLayouts}`)]
      : [];
  if (against === undefined || names.includes(against)) return many;
  const unknown = issueOf("against-unknown", `${against} is none of the compared layouts`);
  return [...many, { ...unknown, option: "--against", value: against }];
}

function issueOf(code: keyof typeof layoutIssueCodes, message: string): Issue {
  return { code, severity: "error", path: "", message, remedy: layoutIssueCodes[code][1], fate: "file" };
}
