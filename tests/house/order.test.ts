// Rules for every file: an opening sentence, a specific name, strict types, and no paths of the development machine.
import { readdirSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { codeUnder, filesUnder, projectFolder, type SourceFile } from "./sourceFiles.ts";
import { codeTokensOf, tokensOf } from "./tokens.ts";

const topLevel = new Set(
  `.ci .git .gitattributes .gitignore DEVELOPERS.md LICENSE NOTICE README.md THIRD-PARTY.txt
  package-lock.json package.json reports scenarios src tests tsconfig.json`.split(/\s+/),
);
/** Generated, and not in the repository. */
const made = new Set(["node_modules", "dist", "coverage", ".vitest"]);
const isMade = (name: string) => made.has(name) || name.endsWith(".tgz");

function unexpectedNames(names: readonly string[]): readonly string[] {
  return names.filter((name) => !topLevel.has(name) && !isMade(name));
}

/** The first comment of a file without its slashes, or "" when the file does not begin with one. */
function openerOf(text: string): string {
  const lines = text.split("\n").filter((line) => !line.startsWith("#!"));
  const end = lines.findIndex((line) => !line.startsWith("//"));
  return lines
    .slice(0, end === -1 ? lines.length : end)
    .map((line) => line.slice(2).trim())
    .join(" ");
}

const isOneSentence = (text: string) => /^\S.*[.?]$/.test(text) && !/[.?!] [A-Z]/.test(text);

function withoutOpener(files: readonly SourceFile[]): readonly string[] {
  return files.filter(({ text }) => !isOneSentence(openerOf(text))).map(({ path }) => path);
}

const vagueNames = /^(?:utils?|helpers?|common|shared|misc|types|index|.*Manager|manager)\.(?:ts|tsx|mjs)$/;

function withVagueName(files: readonly SourceFile[]): readonly string[] {
  return files.map(({ path }) => path).filter((path) => vagueNames.test(path.split("/").at(-1) ?? ""));
}

const looseWords = new Set(["any"]);
const silencers = /@ts-(?:ignore|nocheck|expect-error)/;

/** The type `any`, and comments that switch off the compiler. */
function loosenings(files: readonly SourceFile[]): readonly string[] {
  return files.flatMap(({ path, text }) => {
    const tokens = codeTokensOf(text);
    const loose = tokens.filter(
      (token, index) =>
        token.kind === "word" &&
        looseWords.has(token.text) &&
        [":", "<", "|", "as"].includes(tokens[index - 1]?.text ?? ""),
    );
    const silenced = tokensOf(text).filter((token) => token.kind === "comment" && silencers.test(token.text));
    return [...loose, ...silenced].map((token) => `${path}:${token.line} ${token.text}`);
  });
}

/** Built from pieces, so that this file does not contain the paths. */
const machinePaths = [
  ["work", "main"],
  ["work", "shared"],
  ["tmp", "brief"],
  ["root", ""],
  ["home", "[a-z]"],
  ["Users", "[a-z]"],
]
  .map((pieces) => `/${pieces.join("/")}`)
  .concat(["registry", "proxy"].flatMap((word) => ["npm", "yarn", "golang"].map((maker) => `${word}\\.${maker}`)))
  .join("|");

function withMachinePath(files: readonly SourceFile[]): readonly string[] {
  const pattern = new RegExp(`(?:^|[^\\w.])(?:${machinePaths})`, "m");
  return files.filter(({ text }) => pattern.test(text)).map(({ path }) => path);
}

const sample = (path: string, text: string): readonly SourceFile[] => [{ path, text }];

describe("the project", () => {
  it("has only expected names at its top level", () => {
    expect(unexpectedNames(readdirSync(projectFolder))).toEqual([]);
    expect(unexpectedNames(["notes.txt", "src"])).toEqual(["notes.txt"]);
  });

  it("opens every source and every test with one sentence on its purpose", () => {
    expect(withoutOpener([...codeUnder("src"), ...codeUnder("tests")])).toEqual([]);
  });

  it("reports a missing opener, a fragment and a second sentence", () => {
    const bad = ["const x = 1;\n// Late.", "// no full stop\n", "// One. Two sentences.\n", "//\nconst x = 1;"];
    expect(bad.map((text) => withoutOpener(sample("src/cell/a.ts", text)).length)).toEqual([1, 1, 1, 1]);
    expect(withoutOpener(sample("src/cell/a.ts", "#!/usr/bin/env node\n// The entry\n// of all.\nlet x;"))).toEqual([]);
  });

  it("has no file with a vague name", () => {
    expect(withVagueName([...codeUnder("src"), ...codeUnder("tests")])).toEqual([]);
    expect(withVagueName(sample("src/cell/utils.ts", ""))).toEqual(["src/cell/utils.ts"]);
  });

  it("never switches off the type checker", () => {
    expect(loosenings([...codeUnder("src"), ...codeUnder("tests")])).toEqual([]);
    expect(loosenings(sample("src/a.ts", "let x: any;\nlet y = z as any;\n// @ts-ignore\n"))).toHaveLength(3);
    expect(loosenings(sample("src/a.ts", "const words = 'x: any'; // : any"))).toEqual([]);
  });

  it("contains no path of the development machine and no registry", () => {
    expect(withMachinePath(filesUnder(""))).toEqual([]);
    const pieces = [
      ["cd ", "work", "main"],
      ["https:/", ["registry", "npmjs"].join("."), "x"],
      ["", "home", "someone"],
    ];
    const samples = pieces.map((piece) => piece.join("/"));
    expect(samples.map((text) => withMachinePath(sample("a.md", text)).length)).toEqual([1, 1, 1]);
  });
});
