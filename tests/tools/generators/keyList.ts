// The list of scenario keys in scenarios/README.md, from the description of the keys.
import { keyFacts, type KeyFacts } from "#scenario/keys/keyFacts.ts";

const width = 118;

/** The same text with the list between its two marks written anew. */
export function withKeyList(readme: string): string {
  const [begin, end] = ["<!-- keys -->", "<!-- /keys -->"];
  const from = readme.indexOf(begin) + begin.length;
  const list = keyFacts().map(entry).join("\n");
  return `${readme.slice(0, from)}\n\n${list}\n\n${readme.slice(readme.indexOf(end))}`;
}

function entry({ paths, meaning, value, isNeeded, assumed, example }: KeyFacts): string {
  const standing = assumed ? `Default: ${assumed.value} (${assumed.reason}).` : isNeeded ? "Needed." : "Optional.";
  const places = paths.map((path) => `\`${path}\``).join(", ");
  const sentence = /[.!?]$/u.test(meaning) ? meaning : `${meaning}.`;
  return wrapped(`- ${places}: ${sentence} Value: ${value}. ${standing} Example: \`${example.split("\n")[0]}\``);
}

/** Broken between words; text in backticks stays whole. */
function wrapped(text: string): string {
  const lines: string[] = [];
  let line = "";
  for (const word of text.match(/`[^`]*`[^\s`]*|[^\s`]+/gu) ?? []) {
    if (line !== "" && line.length + 1 + word.length > width) {
      lines.push(line);
      line = `  ${word}`;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  return [...lines, line].join("\n");
}
