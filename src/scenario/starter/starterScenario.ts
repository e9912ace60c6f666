// The text of a starter scenario: the smallest one that runs, and each further group of keys as comments.
import { keyFacts } from "#scenario/keys/keyFacts.ts";
import { newestFormat } from "#scenario/keys/glossary.ts";
import { starterParts, type StarterGroup, type StarterOptions } from "./starterLines.ts";

/** `file` is the name under which it is to be written. */
export function starterScenario(options: StarterOptions, file: string): string {
  const meanings = new Map(keyFacts().flatMap(({ paths, meaning }) => paths.map((path) => [path, meaning] as const)));
  const shown = (line: string): string => withMeaning(line, meanings);
  const body = starterParts(options).flatMap((part) =>
    typeof part === "string" ? [shown(part)] : commented({ ...part, lines: part.lines.map(shown) }),
  );
  return `${[...opening(options, file), ...body].join("\n")}\n`;
}

function opening({ stations, kind }: StarterOptions, file: string): readonly string[] {
  const count = `${stations} ${stations === 1 ? "station" : "stations"}`;
  const question =
    stations === 1
      ? "What does one station make, and how long does the screw wait for its mold?"
      : `What do ${count} make of one screw, and what sets the pace?`;
  return [
    "# yaml-language-server: $schema=./scenario.schema.json",
    `# ${question}`,
    "#",
    "# All numbers are placeholders: replace them with your own. A stopwatch is enough for a first answer.",
    `# \`blowcell check ${file}\` shows the ideal cycle, \`blowcell run ${file}\` simulates the cell,`,
    "# `blowcell explain cool` explains a key, and `blowcell schema > scenario.schema.json` helps editors to complete keys.",
    "# Lines behind `##` are groups of further keys. Delete the `# ` before the lines of a group to use it.",
    `format: ${newestFormat}`,
    `title: My cell, ${count}, ${kind}`,
  ];
}

/** The title and the note stay comments where the `# ` before a whole group is deleted. */
function commented({ title, note, lines }: StarterGroup): readonly string[] {
  return ["", `## ${title}`, ...(note === undefined ? [] : [`## ${note}`]), ...lines.map((line) => `# ${line}`)];
}

function withMeaning(line: string, meanings: ReadonlyMap<string, string>): string {
  const [yaml = "", path] = line.split(" @");
  const meaning = path === undefined ? undefined : meanings.get(path);
  return meaning === undefined ? yaml : `${yaml}  # ${meaning}`;
}
