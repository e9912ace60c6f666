// Every topic that can be explained, and the lists of them.
import { cellTopics } from "./cellTopics.ts";
import { keyTopics } from "./keyTopics.ts";
import { resultTopics } from "./resultTopics.ts";
import { termTopics } from "./termTopics.ts";
import type { Topic, TopicKind } from "./topic.ts";
import { unitTopics } from "./unitTopics.ts";

interface ListSpec {
  readonly kind: TopicKind;
  readonly names: Topic["names"];
  readonly meaning: string;
}

const lists: readonly ListSpec[] = [
  { kind: "term", names: ["terms"], meaning: "Terms of statistics and of the trade." },
  { kind: "key", names: ["keys"], meaning: "Keys of a scenario file." },
  { kind: "choice", names: ["choices"], meaning: "Words that may stand behind a key." },
  { kind: "distribution", names: ["list of distributions"], meaning: "Distributions of a time or rate that varies." },
  { kind: "state", names: ["states", "state"], meaning: "States of screw, valve, stations, servers and operators." },
  { kind: "CSV file", names: ["files", "CSV files", "csv"], meaning: "CSV files that a run writes." },
  { kind: "column", names: ["columns"], meaning: "Columns of the CSV files." },
  { kind: "measure", names: ["measures"], meaning: "What throughput.csv measures." },
  { kind: "indicator", names: ["indicators", "KPI", "KPIs"], meaning: "Indicators of ISO 22400-2, and their parts." },
  { kind: "time element", names: ["time elements"], meaning: "Time elements of ISO 22400-2." },
  { kind: "cost item", names: ["cost items"], meaning: "Items of cost.csv." },
  { kind: "window row", names: ["window rows"], meaning: "Rows of the process window." },
  { kind: "unit", names: ["units"], meaning: "Units of quantities, SI and US customary." },
  { kind: "message code", names: ["codes", "message codes"], meaning: "Codes of errors, warnings and hints." },
  { kind: "command", names: ["commands"], meaning: "Commands." },
  { kind: "option", names: ["options"], meaning: "Options of the commands." },
  { kind: "exit code", names: ["exit codes", "exit code"], meaning: "Exit codes." },
  { kind: "machine failure", names: ["machine failures"], meaning: "What a machine may refuse." },
];

/** `called` are the topics of the program that is called: commands, options, codes. */
export function allTopics(called: readonly Topic[]): readonly Topic[] {
  const topics = [...termTopics, ...keyTopics(), ...cellTopics(), ...resultTopics(), ...unitTopics(), ...called];
  return [
    ...topics,
    ...lists.map(({ kind, ...list }): Topic => ({ ...list, kind: "list", members: membersOf(topics, kind) })),
  ];
}

function membersOf(topics: readonly Topic[], kind: TopicKind): readonly string[] {
  return [...new Set(topics.filter((topic) => topic.kind === kind).map(({ names }) => names[0]))];
}

/** More than this would push the rest off the screen. */
const mostListed = 36;
const fewListed = 8;

/** The first screen: short lists whole, of long ones the beginning and how many there are. */
export function overview(topics: readonly Topic[]): readonly Topic[] {
  return topics.flatMap((topic) => {
    const { kind, members = [], names } = topic;
    if (kind !== "list") return [];
    if (members.length <= mostListed) return [topic];
    const rest = `… ${members.length} in all: blowcell explain ${names[0]}`;
    return [{ ...topic, members: [...members.slice(0, fewListed), rest] }];
  });
}
