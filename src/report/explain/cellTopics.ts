// Topics of the cell: the states of its resources, and the time elements that they count as.
import { elementRules, planRules } from "#cell/words/elementWords.ts";
import { stateMeanings, type StateMeaning } from "#cell/words/stateMeanings.ts";
import type { Topic } from "./topic.ts";

export function cellTopics(): readonly Topic[] {
  return [...Object.entries(stateMeanings).map(([name, state]) => stateTopic(name, state)), openTopic, ...elements()];
}

function stateTopic(
  name: string,
  { of, kind, meaning, cause, causeInContinuous, shorter, caution }: StateMeaning,
): Topic {
  const causes = [cause, causeInContinuous && `${causeInContinuous} (continuous)`].filter((each) => each !== undefined);
  const details: readonly (readonly [string, string | undefined])[] = [
    ["waits for", causes.length === 0 ? undefined : causes.join("; ")],
    ["to wait less", shorter],
    ["caution", caution],
  ];
  return {
    names: [name],
    kind: "state",
    of: `${of}, ${kind}`,
    meaning,
    details: details.flatMap(([label, words]) => (words === undefined ? [] : [[label, words] as const])),
    more: ["states", "time-by-state.csv", ...(caution === undefined ? [] : ["safety"])],
  };
}

const openTopic: Topic = {
  names: ["open to station", "open to"],
  kind: "state",
  of: "selector valve, working",
  meaning: "The valve is open to the named station, and its parison drops.",
  more: ["states"],
};

/** Elements that are no indicator of their own; those with an indicator's name are listed with it. */
function elements(): readonly Topic[] {
  const names = [...new Set([...elementRules.map(({ element }) => element), ...planRules.map(({ counts }) => counts)])];
  return names.map((element) => ({
    names: [element],
    kind: "time element",
    of: "ISO 22400-2",
    meaning: `Time element of a cell or a station. It counts: ${statesOf(element)}.`,
    details: planRules
      .filter(({ counts }) => counts === element)
      .map(({ when, reason }) => ["also", `${when}: ${reason}`]),
    more: ["indicators", "kpi.csv"],
  }));
}

function statesOf(element: string): string {
  const own = elementRules.filter((rule) => rule.element === element);
  const named = own.flatMap(({ states, kind }): readonly string[] => states ?? [`other states that are ${kind}`]);
  return named.length === 0 ? "work outside the planned time" : named.join(", ");
}
