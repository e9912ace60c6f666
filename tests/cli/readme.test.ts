// Every block of the README runs, and prints what the README shows.
import { readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import path from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { isLong } from "../support/caseCount.ts";
import { callBlowcell, newFolder, projectFolder } from "./callBlowcell.ts";
import { callHere } from "./callHere.ts";

interface Block {
  readonly language: string;
  readonly text: string;
}

/** The fenced blocks of a text in their order. */
function blocksOf(markdown: string): readonly Block[] {
  const fences = markdown.matchAll(/^```(\w+)\n(.*?)^```$/gmsu);
  return Array.from(fences, ([, language = "", text = ""]) => ({ language, text }));
}

/** A line of a shell split into words; double quotes hold a word together. */
function wordsOf(line: string): readonly string[] {
  const words = line.replace(/\s+#.*$/u, "").match(/(?:"[^"]*"|[^\s"])+/gu) ?? [];
  return words.map((word) => word.replaceAll('"', ""));
}

const blocks = blocksOf(readFileSync(path.join(projectFolder, "README.md"), "utf8"));
const folder = newFolder();
symlinkSync(path.join(projectFolder, "scenarios"), path.join(folder, "scenarios"));
afterAll(() => rmSync(folder, { recursive: true }));

const calls = blocks.flatMap(({ language, text }, i) => {
  if (language !== "sh") return [];
  const lines = text.split("\n").filter((line) => line.startsWith("blowcell "));
  const shown = blocks[i + 1]?.language === "text" ? blocks[i + 1]?.text : undefined;
  // A text block shows the output of the one call before it.
  return lines.map((line) => ({ line, shown: lines.length === 1 ? shown : undefined }));
});

/** Those that simulate many hours run to their end in the long run only. */
const isBrief = ({ line, shown }: (typeof calls)[number]): boolean =>
  shown !== undefined || / (?:check|page) | --length /u.test(line);

describe("the README", () => {
  for (const { language, text } of blocks) if (language === "yaml") writeFileSync(path.join(folder, "mine.yaml"), text);

  it.each(calls.filter((each) => isLong || isBrief(each)))("$line", ({ line, shown }) => {
    const [, ...words] = wordsOf(line);
    const { code, output, errors } = callBlowcell(words, { folder });
    expect({ code, errors: code === 0 ? "" : errors }).toEqual({ code: 0, errors: "" });
    if (shown !== undefined) expect(`${output.trimEnd()}\n`).toBe(shown);
  });

  it.each(calls.filter((each) => !isBrief(each)))("$line is a right call", async ({ line }) => {
    const [, ...words] = wordsOf(line);
    // All faults are reported at once, so one that is added shows that there is no other.
    const { code, errors } = await callHere([...words, "--seed", " "], { folder });
    expect(code).toBe(2);
    expect(errors.match(/^.*: error: .*$/gmu)).toEqual([expect.stringMatching(/^--seed: error: /u)]);
  });

  it("has calls, an output, a scenario, and no other kind of block", () => {
    expect(calls.length).toBeGreaterThanOrEqual(3);
    expect(calls.filter(({ shown }) => shown !== undefined).length).toBeGreaterThanOrEqual(1);
    expect(new Set(blocks.map(({ language }) => language))).toEqual(new Set(["sh", "text", "yaml"]));
  });

  it("is short: 12 KB, lines of 140 characters, table cells of 120", () => {
    const text = readFileSync(path.join(projectFolder, "README.md"), "utf8");
    expect(Buffer.byteLength(text)).toBeLessThanOrEqual(12_000);
    const lines = text.split("\n");
    expect(lines.filter((line) => line.length > 140 && !line.startsWith("|"))).toEqual([]);
    const cells = lines.filter((line) => line.startsWith("|")).flatMap((line) => line.split("|"));
    expect(cells.filter((cell) => cell.trim().length > 120)).toEqual([]);
  });
});
