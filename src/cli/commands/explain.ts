// The command `explain`: says what a word means, or lists what can be explained.
import type { Act, CommandSpec } from "#cli/call/command.ts";
import { exitCodeOf } from "#cli/machine/exitCode.ts";
import { version } from "#cli/machine/version.ts";
import { printAnswer } from "#cli/output/printAnswer.ts";
import { printIssues } from "#cli/output/printIssues.ts";
import type { Issue } from "#foundation/issue.ts";
import { allTopics, listsOf } from "#report/explain/allTopics.ts";
import { explainAnswer, overview } from "#report/explain/explainAnswer.ts";
import { explanationTable } from "#report/explain/explainTable.ts";
import { topicFinder, type FoundTopics } from "#report/explain/findTopics.ts";
import { resultJson } from "#report/tables/resultJson.ts";
import { calledTopics } from "./calledTopics.ts";

export const explain =
  (commands: readonly CommandSpec[]): Act =>
  (words, options, host) => {
    const known = allTopics(calledTopics(commands));
    const { topics, unknown } =
      words.length === 0 ? { topics: listsOf(known), unknown: [] } : topicFinder(known)(words);
    const issues = unknown.map(issueOf);
    printIssues(issues, host);
    if (options.json === true) {
      const tables = [explanationTable(topics)];
      host.print(resultJson({ command: "explain", version, scenarios: [], warnings: [], tables }));
    } else if (topics.length > 0) {
      printAnswer(
        () => (words.length === 0 ? overview(topics, host.width) : explainAnswer(topics, host.width)),
        options,
        host,
      );
    }
    return exitCodeOf(issues);
  };

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
