// One thing that a user may ask for: a word with its meaning.

export type TopicKind =
  | "term"
  | "list"
  | "key"
  | "choice"
  | "distribution"
  | "state"
  | "message code"
  | "CSV file"
  | "column"
  | "measure"
  | "indicator"
  | "time element"
  | "cost item"
  | "window row"
  | "unit"
  | "command"
  | "option"
  | "exit code"
  | "machine failure";

export interface Topic {
  /** The words that find it; the first is shown. */
  readonly names: readonly [string, ...string[]];
  readonly kind: TopicKind;
  /** Where it belongs, such as the file of a column or the resource of a state; shown beside the kind. */
  readonly of?: string;
  readonly meaning: string;
  readonly unit?: string;
  /** What is assumed where a key is absent. */
  readonly assumed?: string;
  /** YAML or a call; may have several lines. */
  readonly example?: string;
  /** Whatever else belongs to it, each with its label. */
  readonly details?: readonly (readonly [label: string, words: string])[];
  /** The topics of a list, by name. */
  readonly members?: readonly string[];
  /** Topics to read next. */
  readonly more?: readonly string[];
}

/** Several things that have one meaning are one topic with all their names. */
export function mergedTopics(topics: readonly Topic[]): readonly Topic[] {
  const merged = new Map<string, Topic>();
  for (const topic of topics) {
    const { names, of = "", ...same } = topic;
    const key = JSON.stringify([names[0], same]);
    const known = merged.get(key);
    const homes = [...new Set([known?.of ?? "", of].filter((home) => home !== ""))].join(", ");
    const [first, ...others] = known?.names ?? names;
    merged.set(key, {
      ...topic,
      names: [first, ...new Set([...others, ...names.slice(1)])],
      ...(homes === "" ? {} : { of: homes }),
    });
  }
  return [...merged.values()];
}
