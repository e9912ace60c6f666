// The answer to `explain`: each topic in a few lines, or the list of all topics.
import { wrappedLines } from "#report/words/alignedLines.ts";
import type { Topic } from "./topic.ts";

/** `width` in columns of the terminal. */
export function explainAnswer(topics: readonly Topic[], width = 80): string {
  return `${topics.map((topic) => topicLines(topic, width).join("\n")).join("\n\n")}\n`;
}

/** More than this would push the rest off the screen. */
const mostListed = 60;
const fewListed = 8;

/** The first screen: short lists whole, of long ones the beginning and how many there are. */
export function overview(lists: readonly Topic[], width = 80): string {
  const short = lists.map((list): Topic => {
    const { members = [], names } = list;
    if (members.length <= mostListed) return list;
    const rest = `… ${members.length} in all: blowcell explain ${names[0]}`;
    return { ...list, members: [...members.slice(0, fewListed), rest] };
  });
  return `blowcell explain WORD explains each of these:\n\n${explainAnswer(short, width)}`;
}

export function topicLines(topic: Topic, width = 80): readonly string[] {
  const { names, kind, of, meaning, example, more = [] } = topic;
  if (kind === "list") return listLines(topic, width);
  const heading = `${names[0]}: ${kind}${of === undefined ? "" : ` (${of})`}`;
  const shown = (example ?? "").split("\n").filter((line) => line !== "");
  const [only = ""] = shown;
  return [
    ...wrappedLines(heading, width),
    ...wrappedLines(`  ${meaning}`, width),
    ...labelled(topic).flatMap(([label, words]) => wrappedLines(`  ${label}: ${words}`, width)),
    ...(shown.length > 1 ? ["  example:", ...shown.map((line) => `    ${line}`)] : []),
    ...(shown.length === 1 ? wrappedLines(`  example: ${only}`, width) : []),
    ...(more.length === 0 ? [] : wrappedLines(`  more: blowcell explain ${more.join(" | ")}`, width)),
  ];
}

function listLines({ names, meaning, members = [] }: Topic, width: number): readonly string[] {
  return [...wrappedLines(`${names[0]}: ${meaning}`, width), ...wrappedLines(`  ${members.join("; ")}`, width)];
}

/** What is said with a label, in its order. */
export function labelled({ kind, unit, assumed, details = [] }: Topic): readonly (readonly [string, string])[] {
  return [
    ...(unit === undefined ? [] : [[kind === "key" ? "value" : "unit", unit] as const]),
    ...(assumed === undefined ? [] : [["default", assumed] as const]),
    ...details,
  ];
}
