// Every issue code of the sources is listed with a meaning, and every listed code is used and tested.
import { expect, it } from "vitest";
import { issueCodes } from "#scenario/reading/issueCodes.ts";
import { codeUnder } from "../../house/sourceFiles.ts";

function codesIn(folder: string, pattern: RegExp): ReadonlySet<string> {
  const files = codeUnder(folder).filter(({ path }) => !/issueCodes/u.test(path));
  return new Set(files.flatMap(({ text }) => Array.from(text.matchAll(pattern), (match) => match[1] ?? "")));
}

const words = /"([a-z]+(?:-[a-z]+)*)"/gu;
const listed = Object.keys(issueCodes);

it("lists every issue code of the sources", () => {
  const named = /(?:code: (?:\w+ \? )?|fault\(\s*|add\(\s*(?:node\.)?range,\s*)"([a-z]+(?:-[a-z]+)*)"/gu;
  const given = [...codesIn("src/scenario", named), ...codesIn("src/foundation", named)];
  expect(given.length).toBeGreaterThan(50);
  // `custom` is the validation library's code for an issue of the program.
  expect(given.filter((code) => code !== "custom" && !listed.includes(code))).toEqual([]);
});

it("lists only codes that the sources use and the tests expect", () => {
  const written = new Set([...codesIn("src/scenario", words), ...codesIn("src/foundation", words)]);
  expect(listed.filter((code) => !written.has(code))).toEqual([]);
  const tested = codesIn("tests/unit/scenario", words);
  expect(listed.filter((code) => !tested.has(code))).toEqual([]);
});

it("gives each meaning in words, without a full stop, and each remedy in a sentence", () => {
  for (const [code, [meaning, remedy]] of Object.entries(issueCodes)) {
    expect(`${code} ${meaning}`).toMatch(/^[a-z-]+ \S.*[^.]$/u);
    expect(remedy).toMatch(/^[A-Z].*\.$/u);
  }
});
