// Finds the topics that a user asks for, and what was probably meant where there is none.
import { closestWords } from "#foundation/didYouMean.ts";
import type { IssueMeaning } from "#foundation/issue.ts";
import type { Topic } from "./topic.ts";

export const explainIssueCodes = {
  "topic-unknown": ["there is nothing to explain under this word", "See `blowcell explain` for the topics."],
} as const satisfies Readonly<Record<string, IssueMeaning>>;

export interface FoundTopics {
  readonly topics: readonly Topic[];
  readonly unknown: readonly { readonly word: string; readonly meant: readonly string[] }[];
}

const mostMeant = 5;

/**
 * Returns the search in these topics. The longest run of words that is a topic counts as one: `awaiting melt` is asked for as a
 * whole, `cool vent` one by one.
 */
export function topicFinder(topics: readonly Topic[]): (words: readonly string[]) => FoundTopics {
  const index = indexOf(topics);
  const names = [...new Set(topics.flatMap((topic) => topic.names))];
  return (words) => findTopics(words, index, names);
}

function findTopics(words: readonly string[], index: Index, names: readonly string[]): FoundTopics {
  const rest = words.flatMap((word) => word.split(/\s+/u)).filter((word) => word !== "");
  const found = new Set<Topic>();
  const unknown: string[][] = [];
  for (let at = 0, isOpen = false; at < rest.length;) {
    const length = longestKnown(rest.slice(at), index);
    for (const topic of lookUp(rest.slice(at, at + length).join(" "), index)) found.add(topic);
    if (length === 0 && isOpen) unknown.at(-1)?.push(rest[at] ?? "");
    else if (length === 0) unknown.push([rest[at] ?? ""]);
    isOpen = length === 0;
    at += Math.max(1, length);
  }
  if (unknown.length === 0) return { topics: [...found], unknown: [] };
  const meantBy = (word: string) => ({ word, meant: closestWords(word, names, mostMeant) });
  const whole = meantBy(rest.join(" "));
  // One slip in a phrase: the words around it are no topics of their own.
  if (whole.meant.length > 0) return { topics: [], unknown: [whole] };
  return { topics: [...found], unknown: unknown.map((run) => meantBy(run.join(" "))) };
}

type Index = ReadonlyMap<string, readonly Topic[]>;

function indexOf(topics: readonly Topic[]): Index {
  const index = new Map<string, Topic[]>();
  for (const topic of topics) {
    for (const name of new Set(topic.names.map(plain))) index.set(name, [...(index.get(name) ?? []), topic]);
  }
  return index;
}

/** Capital letters, hyphens and quotes make no difference. */
function plain(name: string): string {
  return name
    .toLowerCase()
    .replaceAll(/[`"'?]/gu, "")
    .replaceAll(/[\s_-]+/gu, " ")
    .trim();
}

function longestKnown(words: readonly string[], index: Index): number {
  for (let length = words.length; length > 0; length--) {
    if (lookUp(words.slice(0, length).join(" "), index).length > 0) return length;
  }
  return 0;
}

/** A path of a scenario, as errors show it, is that of its key: `stations.left.steps.cool`, `stations[0].cavities`. */
function lookUp(word: string, index: Index): readonly Topic[] {
  const name = plain(word);
  const known = index.get(name);
  if (known || !/\w[.[]\w/u.test(name)) return known ?? [];
  const parts = name.replaceAll(/\[\d*\]/gu, ".*").split(".");
  const pattern = [...index.keys()].find((key) => key.includes("*") && isPathOf(parts, key.split(".")));
  return pattern === undefined ? [] : (index.get(pattern) ?? []);
}

/** `*` stands for any station or entry, or for none where one mapping stands for all stations. */
function isPathOf(parts: readonly string[], pattern: readonly string[]): boolean {
  const fits = (wanted: readonly string[]): boolean =>
    parts.length === wanted.length && wanted.every((part, i) => part === "*" || part === parts[i]);
  return fits(pattern) || fits(pattern.filter((part) => part !== "*"));
}
