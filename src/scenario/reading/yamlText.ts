// Parses a text as the plain part of YAML 1.2 that a scenario is written in, and words what does not belong there.
import { parseDocument, type Document, type YAMLError } from "yaml";
import type { Fault } from "#foundation/fault.ts";
import type { Issue } from "#foundation/issue.ts";
import { removeForeignParts } from "./foreignYaml.ts";
import type { Source } from "./source.ts";

/** Characters: twice as many as the largest cell needs. The parser takes seconds for a text of this length without sense. */
const longest = 250_000;

/** Far deeper than a scenario; the parser takes seconds to find this out. */
const deepest = 200;

export interface ParsedText {
  /** Absent where the text is not YAML at all. */
  readonly document?: Document;
  readonly issues: readonly Issue[];
}

export function parseText(source: Source): ParsedText {
  const unfit = unfitness(source.text);
  if (unfit !== undefined) return { issues: [issueAt(source, 0, unfit)] };
  const document = parseDocument(source.text, {
    version: "1.2",
    schema: "core",
    merge: false,
    // The parser compares every key with every other one; `removeForeignParts` finds duplicates in one pass.
    uniqueKeys: false,
    prettyErrors: false,
    logLevel: "error",
    lineCounter: source.lines,
  });
  // After the first broken place the parser guesses, so its later errors would mislead.
  const [broken] = document.errors;
  if (broken) return { issues: [issueAt(source, broken.pos[0], yamlFault(broken, source))] };
  const issues = removeForeignParts(document).map(({ offset, fault }) => issueAt(source, offset, fault));
  return document.contents === null ? { issues } : { document, issues };
}

function unfitness(text: string): Fault | undefined {
  const expected = "a scenario in YAML or JSON, as UTF-8 text";
  if (text.length > longest) {
    const remedy =
      "Check that this is a scenario; keep long lists of values in a CSV file: `{ empirical: { file, column } }`.";
    const message = `The text has ${text.length} characters; more than ${longest} are no scenario.`;
    return { code: "file-too-large", message, expected, remedy };
  }
  // Written as escapes, because the characters would make this file binary.
  if (text.includes("\u0000")) {
    return {
      code: "file-binary",
      message: "This is not a text file, or not one in UTF-8.",
      expected,
      remedy: "Check the file; save it as UTF-8.",
    };
  }
  if (text.includes("\uFFFD")) {
    return { code: "file-encoding", message: "The text is not valid UTF-8.", expected, remedy: "Save it as UTF-8." };
  }
  if (depthOf(text) > deepest) return tooDeep;
  if (text.trim() === "") {
    return { code: "file-empty", message: "The text is empty.", expected, remedy: "Begin with a shipped scenario." };
  }
  return undefined;
}

const tooDeep: Fault = {
  code: "yaml-depth",
  message: `The text is nested deeper than ${deepest} brackets or lists.`,
  remedy: "Check the brackets.",
};

/** The largest number of open brackets, those within texts and comments included. */
function depthOf(text: string): number {
  let [depth, most] = [0, 0];
  for (const [bracket] of text.matchAll(/[[\]{}]/gu)) {
    depth = "[{".includes(bracket) ? depth + 1 : Math.max(0, depth - 1);
    most = Math.max(most, depth);
  }
  return most;
}

function issueAt(source: Source, offset: number, fault: Fault, value?: string): Issue {
  const place = source.placeOf(Math.max(0, Math.min(offset, source.text.length)));
  return { severity: "error", fate: "file", place, path: "", ...(value === undefined ? {} : { value }), ...fault };
}

function yamlFault(error: YAMLError, source: Source): Fault {
  const fault = wordings[error.code]?.(source, error.pos);
  if (fault !== undefined) return fault;
  const message = `${error.message.split("\n")[0] ?? ""}.`;
  const remedy = "Check indentation, colons, quotes and brackets here and on the line before.";
  return { code: "yaml-syntax", message, remedy };
}

type Wording = (source: Source, pos: readonly [number, number]) => Fault;

/** Messages for frequent errors; all others use the parser's text. */
const wordings: Partial<Readonly<Record<YAMLError["code"], Wording>>> = {
  MULTIPLE_DOCS: () => ({
    code: "yaml-documents",
    message: "The file holds more than one document.",
    remedy: "Keep one scenario a file; delete `---`.",
  }),
  TAB_AS_INDENT: () => ({ code: "yaml-tab", message: "A tab is used to indent.", remedy: "Indent with spaces." }),
  BLOCK_AS_IMPLICIT_KEY: () => ({
    code: "yaml-syntax",
    message: "A second colon stands on this line.",
    remedy: 'Put the text in quotes: `"a: b"`.',
  }),
  BAD_ALIAS: (source, [from, to]) => ({
    code: "yaml-anchor",
    message: `The alias \`${source.excerpt(from, to)}\` refers to nothing.`,
    remedy: "Write the value out.",
  }),
  RESOURCE_EXHAUSTION: () => tooDeep,
};
