// Holds every text of the program, of its documents and of its comments to the words of the trade.
import { describe, expect, it } from "vitest";
import { filesUnder, type SourceFile } from "./sourceFiles.ts";
import { tokensOf } from "./tokens.ts";

/** Words that are not used, and what to write instead. */
const dropped: readonly (readonly [pattern: RegExp, instead: string])[] = [
  [/\bluck\b/iu, "random numbers"],
  [/\bbinding (?:path|chain)\b/iu, "critical path"],
  [/\bto spare\b|\bhair\b/iu, "slack or tolerance"],
  [/\b(?:some|no|any)body\b|\bwhoever\b|\bwhom\b|\bstrangers?\b/iu, "the operator, the resource or the user"],
  [/\b(?:he|him|his)\b/iu, "they"],
  [/\bhands?\b(?! (?:over|to)\b)/iu, "operator"],
  [/\b(?:tells?|told)\b|\bhears?\b/iu, "print, report, show or list"],
  [/\beject\w*|\btak(?:e|es|en|ing) out\b/iu, "removal"],
  [/\bnever stops\b/iu, "continuous extrusion"],
  [/\b(?<!power |Little's |power-)laws?\b(?!, [A-Z])/iu, "distribution"],
  [/\b(?:thereby|thereof|whereby|lest|nought|would else)\b/iu, "plain words"],
];

const wordsOfName = (name: string): string =>
  name
    .replaceAll(/(?<=[a-z0-9])(?=[A-Z])/gu, " ")
    .replaceAll("_", " ")
    .toLowerCase();

/** The texts of a file with their lines: of code its comments, strings and names, of other files every line. */
function textsOf({ path, text }: SourceFile): readonly (readonly [line: number, text: string])[] {
  if (!/\.(?:ts|mjs)$/u.test(path)) return text.split("\n").map((line, i) => [i + 1, line] as const);
  return tokensOf(text).map(
    (token) => [token.line, token.kind === "word" ? wordsOfName(token.text) : token.text] as const,
  );
}

function droppedWords(files: readonly SourceFile[]): readonly string[] {
  return files.flatMap((file) =>
    textsOf(file).flatMap(([line, text]) =>
      dropped.flatMap(([pattern, instead]) => {
        const found = pattern.exec(text);
        return found === null ? [] : [`${file.path}:${line} "${found[0]}": say ${instead}`];
      }),
    ),
  );
}

const documents = filesUnder("").filter(
  ({ path }) =>
    /^(?:src|scenarios|reports)\/.*\.(?:ts|md|yaml)$/u.test(path) || /^(?:README|DEVELOPERS)\.md$/u.test(path),
);

describe("the glossary", () => {
  it("is kept by sources, scenarios and documents", () => {
    expect(documents.length).toBeGreaterThan(300);
    expect(droppedWords(documents)).toEqual([]);
  });

  it.each([
    ["src/cell/a.ts", "// The same luck for both.\n"],
    ["src/cell/a.ts", 'const words = "somebody waits";\n'],
    ["src/cell/a.ts", "const words = `0.9 s to spare`;\n"],
    ["src/cell/a.ts", "const timeLaw = 1;\n"],
    ["src/cell/a.ts", "const told = 1;\n"],
    ["README.md", "Parts are taken out by hand.\n"],
  ])("finds a dropped word in %s: %j", (path, text) => {
    expect(droppedWords([{ path, text }])).not.toEqual([]);
  });

  it("leaves the names of laws of physics and of the author Law", () => {
    const text =
      "// A power law melt. Little's law. Source: Law, Simulation Modeling and Analysis.\nconst powerLawIndex = 1;\n";
    expect(droppedWords([{ path: "src/cell/a.ts", text }])).toEqual([]);
  });
});
