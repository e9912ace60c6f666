// Topics of the program as it is called: commands, options, exit codes, message codes, and what a machine may refuse.
import type { CommandSpec } from "#cli/call/command.ts";
import { exitMeanings } from "#cli/machine/exitCode.ts";
import { reasons } from "#cli/machine/machineFailure.ts";
import { mergedTopics, type Topic } from "#report/explain/topic.ts";
import { issueMeanings } from "./issueMeanings.ts";

export function calledTopics(commands: readonly CommandSpec[]): readonly Topic[] {
  return [
    ...commands.map(commandTopic),
    ...mergedTopics(commands.flatMap(optionTopics)),
    ...exitMeanings.map(exitTopic),
    ...[...issueMeanings].map(codeTopic),
    ...[...reasons].map(failureTopic),
  ];
}

function commandTopic({ name, operands, meaning, example, options }: CommandSpec): Topic {
  return {
    names: [name, `blowcell ${name}`],
    kind: "command",
    meaning: sentence(meaning),
    details: [
      ["call", `blowcell ${name} ${operands}`.trim()],
      ["options", options.map(({ flags }) => longName(flags)).join(", ")],
    ],
    example,
  };
}

/** `--out` of `-o, --out <folder>`. */
function longName(flags: string): string {
  return /--[a-z-]+/u.exec(flags)?.[0] ?? flags;
}

/** An option of several commands with one meaning is listed once. */
function optionTopics({ name, options }: CommandSpec): readonly Topic[] {
  return options.map(({ flags, meaning }) => {
    return { names: [longName(flags), flags], kind: "option", of: name, meaning: sentence(meaning), example: flags };
  });
}

function exitTopic({ code, meaning }: (typeof exitMeanings)[number]): Topic {
  return {
    names: [`exit code ${code}`, String(code)],
    kind: "exit code",
    meaning: sentence(meaning),
    more: ["exit codes"],
  };
}

function codeTopic([code, [meaning, remedy]]: readonly [string, readonly [string, string]]): Topic {
  return { names: [code], kind: "message code", meaning: sentence(meaning), details: [["remedy", remedy]] };
}

function failureTopic([code, { why, remedy }]: readonly [
  string,
  { readonly why: string; readonly remedy: string },
]): Topic {
  const details = [["remedy", remedy]] as const;
  return { names: [code], kind: "machine failure", meaning: sentence(why), details, more: ["exit code 74"] };
}

function sentence(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}${words.endsWith(".") ? "" : "."}`;
}
