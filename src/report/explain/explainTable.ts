// Topics as a table, for `--json`.
import { number, text } from "#report/tables/columns.ts";
import { fillTable, type Table, type TableSpec } from "#report/tables/table.ts";
import type { Topic } from "./topic.ts";

export const explanationSpec: TableSpec = {
  name: "explanation",
  meaning: "One topic that `explain` knows; only in its JSON.",
  columns: [
    number("rank", "Place of the topic in the answer"),
    text("topic", "Name of the topic"),
    text("kind", "What it is, such as a key or a state"),
    text("belongs_to", "Where it belongs, such as the file of a column"),
    text("meaning", "What it means"),
    text("unit", "Unit of its values; of a key what may stand behind it"),
    text("default", "What is assumed where a key is absent"),
    text("details", "Whatever else belongs to it"),
    text("example", "How it is written"),
    text("more", "Topics to read next"),
  ],
};

export function explanationTable(topics: readonly Topic[]): Table {
  const rows = topics.map(
    ({ names, kind, of, meaning, unit, assumed, details = [], example, members = [], more = [] }, i) => [
      i + 1,
      names[0],
      kind,
      of ?? null,
      meaning,
      unit ?? null,
      assumed ?? null,
      details.map(([label, words]) => `${label}: ${words}`).join("; "),
      example ?? null,
      [...members, ...more].join(", "),
    ],
  );
  return fillTable(explanationSpec, rows);
}
