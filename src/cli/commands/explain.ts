// The command `explain`: says what a word means, or lists what can be explained.
import type { Act, CommandSpec } from "#cli/call/command.ts";
import { exitCode, exitCodeOf } from "#cli/machine/exitCode.ts";
import { version } from "#cli/machine/version.ts";
import { printAnswer } from "#cli/output/printAnswer.ts";
import { printIssues } from "#cli/output/printIssues.ts";
import type { Issue } from "#foundation/issue.ts";
import { allTopics, overview } from "#report/explain/allTopics.ts";
import { explainAnswer } from "#report/explain/explainAnswer.ts";
import { explanationTable } from "#report/explain/explainTable.ts";
import { findTopics, type FoundTopics } from "#report/explain/findTopics.ts";
import { resultJson } from "#report/tables/resultJson.ts";
import { calledTopics } from "./calledTopics.ts";

export const explain =
  (commands: readonly CommandSpec[]): Act =>
  (words, options, host) => {
    const known = allTopics(calledTopics(commands));
    const { topics, unknown } =
      words.length === 0 ? { topics: overview(known), unknown: [] } : findTopics(words, known);
    const issues = unknown.map(issueOf);
    printIssues(issues, host);
    if (options.json === true) {
      const tables = [explanationTable(topics)];
      host.print(resultJson({ command: "explain", version, scenarios: [], warnings: [], tables }));
    } else if (topics.length > 0)
      printAnswer(() => introduction(words) + explainAnswer(topics, host.width), options, host);
    return issues.length > 0 ? exitCodeOf(issues) : exitCode.done;
  };

/** Above the lists alone. */
function introduction(words: readonly string[]): string {
  return words.length > 0 ? "" : "blowcell explain WORD explains each of these:\n\n";
}

function issueOf({ word, meant }: FoundTopics["unknown"][number]): Issue {
  const names = meant.map((name) => `\`${name}\``).join(", ");
  return {
    code: "topic-unknown",
    severity: "error",
    path: "",
    message: "There is nothing to explain under this word.",
    value: word,
    remedy: names === "" ? "`blowcell explain` lists the topics." : `Did you mean ${names}?`,
    fate: "file",
  };
}
