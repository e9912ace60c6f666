// Reads the doc comments of formulas and their sections.

export interface DocComment {
  readonly name: string;
  readonly text: string;
  readonly sentence: string;
  /** Indented lines: the formula itself. */
  readonly formula: readonly string[];
  /** By the word before the colon: Units, Shape, Holds for, Source, Throws. */
  readonly sections: ReadonlyMap<string, string>;
  readonly examples: readonly { readonly code: string; readonly value: string }[];
}

const documented = /\/\*\*\n((?: \*.*\n)+) \*\/\nexport function (\w+)/g;
const exported = /^export function (\w+)/gm;
const section = /^(Units|Shape|Holds for|Source|Throws): (.*)$/;

/** Names of all exported functions of a text, documented or not. */
export function exportedFunctions(text: string): readonly string[] {
  return Array.from(text.matchAll(exported), ([, name = ""]) => name);
}

export function docComments(text: string): readonly DocComment[] {
  return Array.from(text.matchAll(documented), ([, body = "", name = ""]) => parsed(name, body));
}

function parsed(name: string, body: string): DocComment {
  const lines = body.split("\n").map((line) => line.replace(/^ \* ?/, ""));
  const start = lines.indexOf("@example");
  const prose = start === -1 ? lines : lines.slice(0, start);
  const sections = new Map<string, string>();
  let open = "";
  for (const line of prose) {
    const [, word, rest = ""] = section.exec(line) ?? [];
    if (word !== undefined) open = word;
    if (open === "" || line === "") continue;
    sections.set(open, word === undefined ? `${sections.get(open) ?? ""} ${line}` : rest);
  }
  const examples = (start === -1 ? [] : lines.slice(start + 1)).flatMap((line) => {
    const [, code, value] = /^(.+) \/\/ (\S+)$/.exec(line) ?? [];
    return code === undefined || value === undefined ? [] : [{ code, value }];
  });
  const formula = prose.filter((line) => line.startsWith("    "));
  return { name, text: body, sentence: prose[0] ?? "", formula, sections, examples };
}

/** Author, title, year and place in the source; or derived here; or common practice, marked as such. */
export const sourcePattern =
  /^(?:.+, .+, (?:18|19|20)\d\d, (?:equation|eq\.|section|sections|chapter|clause|table|example|appendix|p\.|pp\.) ?[^,]+.*|Derived here .+|Common practice, no published source.*)$/;
