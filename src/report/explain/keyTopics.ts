// Topics of what a scenario is written with: its keys, the words that may stand behind them, and the distributions.
import { distributionShapes, empirical } from "#scenario/distributions/distributionShape.ts";
import { keyFacts, type KeyFacts } from "#scenario/keys/keyFacts.ts";
import { mergedTopics, type Topic } from "./topic.ts";

export function keyTopics(): readonly Topic[] {
  const keys = keyFacts();
  return [...keys.map(keyTopic), ...mergedTopics(keys.flatMap(choiceTopics)), ...distributionTopics()];
}

/** Every ending of a path finds the key: `stations.*.steps.cool`, `steps.cool` and `cool`. */
function endingsOf(path: string): readonly string[] {
  const parts = path.split(".");
  return parts.map((_, i) => parts.slice(i).join(".")).filter((ending) => !ending.startsWith("*"));
}

function keyTopic({ name, paths, meaning, value, isNeeded, assumed, example, choices }: KeyFacts): Topic {
  const varies = value.includes("distribution");
  const more = [...choices.map(({ word }) => word), ...(varies ? ["distribution"] : [])];
  const absent = assumed ? `${assumed.value} (${assumed.reason})` : isNeeded ? "none, the key is needed" : "";
  return {
    names: [name, ...new Set(paths.flatMap(endingsOf))],
    kind: "key",
    of: paths.join(", "),
    meaning,
    unit: value,
    ...(absent === "" ? {} : { assumed: absent }),
    example,
    ...(more.length === 0 ? {} : { more }),
  };
}

function choiceTopics({ name, paths, choices, example }: KeyFacts): readonly Topic[] {
  return choices.map(({ word, meaning }) => ({
    names: [word, `${name}: ${word}`],
    kind: "choice",
    of: paths.join(", "),
    meaning,
    example: example.includes("[") ? `${name}: [${word}]` : `${name}: ${word}`,
    more: [paths[0] ?? name],
  }));
}

function distributionTopics(): readonly Topic[] {
  return Object.entries({ ...distributionShapes, empirical }).map(([name, { meaning, parameters, example }]) => ({
    names: [name],
    kind: "distribution",
    meaning,
    details: [["values", parameters.join(", ")]],
    example: `{ ${name}: ${example} }`,
    more: ["distribution"],
  }));
}
