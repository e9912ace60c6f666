// The issues of a file in the words of the command line: place, what is wrong, and the remedy.
import { h, type ComponentChild } from "preact";
import type { Issue } from "#foundation/issue.ts";
import { issueWords } from "#report/words/issueWords.ts";

interface IssueListProps {
  readonly issues: readonly Issue[];
  /** Named in a heading where the file is refused. */
  readonly file?: string;
}

export function IssueList({ issues, file }: IssueListProps): ComponentChild {
  if (issues.length === 0) return null;
  const items = issues.map((issue) => {
    const { place, severity, message, code, details } = issueWords(issue);
    return h(
      "li",
      {},
      h("p", {}, `${place}: ${severity}: ${message} [${code}]`),
      h(
        "dl",
        {},
        details.map(([label, words]) => [h("dt", {}, label), h("dd", {}, words)]),
      ),
    );
  });
  const isRefused = file !== undefined;
  return h(
    "section",
    { class: "issues", role: isRefused ? "alert" : undefined, "aria-label": "Findings" },
    isRefused ? h("h1", {}, `${file} cannot be used`) : null,
    h("ul", { class: isRefused ? "warnings" : "unusual" }, items),
  );
}
