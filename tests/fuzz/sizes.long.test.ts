// The largest texts and cells that are read: an answer in words, or an answer at all, where an earlier program hung or failed.
import { expect, it } from "vitest";
import { chanceOf } from "./chance.ts";
import { fuzzCase } from "./fuzzCase.ts";
import { judge } from "./judge.ts";
import { underGuard } from "./watchdog.ts";

const longest = 250_000;
const pieces = [
  "- ",
  "? ",
  "!a ",
  "&a ",
  "---\n",
  "- a\n",
  '"',
  "'",
  "#",
  ": ",
  ":\n",
  "%T a\n",
  "- &a 1\n",
  "- |\n",
  ",",
];
const more = [
  "a: >\n",
  "\t\n",
  "-\n",
  "@\n",
  "title: a\n",
  "?\n",
  "a: 1 # b\n",
  "[",
  "{",
  "[a,",
  "{a: ",
  "]",
  "\\",
  "\uFEFF",
];

it.each([...pieces, ...more])("a text of %j alone", (piece) => {
  const text = piece.repeat(longest / piece.length);
  underGuard(JSON.stringify(piece), 1, () => {
    expect(judge({ text, set: [], column: undefined }, "check")).toEqual({ accepted: false, faults: [] });
  });
});

const cell = (changes: string): string => `format: 1
delivery: { kind: reciprocating-screw, recharge: 1 s, drop: 1 s }
valve: { shift: 0.3 s }
crew: { operators: 2 }
stations: { count: 2, cavities: 2, steps: { close: 1 s, blow: 1 s, cool: 9 s, vent: 1 s, open: 1 s, remove: 1 s } }
${changes}
`;
const named = (i: number): string => String.fromCodePoint(97 + Math.floor(i / 26), 97 + (i % 26));
const servers = (count: number, keys: string): string =>
  `takeaway:\n${Array.from({ length: count }, (_, i) => `  server ${named(i)}: { time: 0.1 s, ${keys} }`).join("\n")}`;
const shifts = `calendar: { from: 2026-01-01, shifts: [{ start: "06:00", end: "22:00", breaks: [{ at: "09:30", time: 30 min }] }] }`;

it.each([
  ["a hundred servers", servers(100, "buffer: 3")],
  ["two thousand places", servers(5, "places: 200, perStation: yes, buffer: 1000000")],
  ["a hundred years of work shifts", `${shifts}\nrun: { length: 36500 d }`],
])("%s", (name, changes) => {
  underGuard(name, 1, () => {
    expect(judge({ text: cell(changes), set: [], column: undefined }, "check")).toEqual({ accepted: true, faults: [] });
  });
});

it("many texts of random YAML signs", () => {
  const signs = "{}[]:,-?&*!|>'\"%#@ \n\t~.<=0a\r\u2028\u0085é".split("");
  underGuard("signs", 2000, (number) => {
    const chance = chanceOf("signs", number);
    const head = chance.is(0.3) ? fuzzCase("signs", number).text : "";
    const text = head + Array.from({ length: chance.below(300) }, () => chance.of(signs)).join("");
    expect(judge({ text, set: [], column: undefined }, "read").faults).toEqual([]);
  });
});
