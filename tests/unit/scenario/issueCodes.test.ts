// Every code that the sources can give has a meaning, and every meaning has a code that is given and tested.
import { expect, it } from "vitest";
import { issueCodes } from "#scenario/reading/issueCodes.ts";
import { codeUnder } from "../../house/sourceFiles.ts";

function codesIn(folder: string, pattern: RegExp): ReadonlySet<string> {
  const files = codeUnder(folder).filter(({ path }) => !/issueCodes/u.test(path));
  return new Set(files.flatMap(({ text }) => Array.from(text.matchAll(pattern), (match) => match[1] ?? "")));
}

const words = /"([a-z]+(?:-[a-z]+)*)"/gu;
const listed = Object.keys(issueCodes);

it("lists every code that the sources name as one", () => {
  const named = /(?:code: (?:\w+ \? )?|fault\(\s*|add\(\s*(?:node\.)?range,\s*)"([a-z]+(?:-[a-z]+)*)"/gu;
  const given = [...codesIn("src/scenario", named), ...codesIn("src/foundation", named)];
  expect(given.length).toBeGreaterThan(50);
  // `custom` is the validation library's word for an issue of ours.
  expect(given.filter((code) => code !== "custom" && !listed.includes(code))).toEqual([]);
});

it("lists no code that the sources never give, and none that no test asks for", () => {
  const written = new Set([...codesIn("src/scenario", words), ...codesIn("src/foundation", words)]);
  expect(listed.filter((code) => !written.has(code))).toEqual([]);
  const tested = codesIn("tests/unit/scenario", words);
  expect(listed.filter((code) => !tested.has(code))).toEqual([]);
});

it("says each meaning in words, without a full stop", () => {
  for (const [code, meaning] of Object.entries(issueCodes)) expect(`${code} ${meaning}`).toMatch(/^[a-z-]+ \S.*[^.]$/u);
});
