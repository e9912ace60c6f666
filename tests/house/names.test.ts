// Keeps the names of states and steps in one place: all other code imports them or uses a role.
import { describe, expect, it } from "vitest";
import { headOf, maskOf, operatorName, ramOf } from "#cell/words/cycleNames.ts";
import { openTo, stateNames } from "#cell/words/stateNames.ts";
import { stepNames, subjectNames } from "#cell/words/stepNames.ts";
import { codeUnder, type SourceFile } from "./sourceFiles.ts";
import { codeTokensOf, type Token } from "./tokens.ts";

/** The files that define names. */
const home = /^src\/cell\/words\/(?:cycleNames|stateNames|stepNames)\.ts$/;

/**
 * Rooms without knowledge of the cell's table. In `scenario` and `physics`, `close`, `cool` or `cut` are words of the scenario
 * format: keys of a file, and their values.
 */
const strangers = /^src\/(?:core|foundation|physics|scenario)\//;

const names = new Set<string>([...Object.values(stateNames), ...Object.values(stepNames)]);

/** The fixed parts of names that are made for a station, a number or a step: `open to `, ` judged`. */
const pieces = new Set(
  [openTo, headOf, ramOf, maskOf, ...Object.values(subjectNames)]
    .flatMap((nameOf) => nameOf("§").split("§"))
    .concat(operatorName(0).replace("1", ""))
    .filter((piece) => piece !== ""),
);

/**
 * Some names are also values of another type. The compiler checks a literal of such a type: after one of these words, which are the
 * type or a property of it.
 */
const typed = new Set(
  `kind StateKind kinds orderOfKinds rule StopRule StopEffect finish hold scrap effect task by fill Fill dayUses item rate StationSpec content MoldContent air MoldAir`.split(
    " ",
  ),
);

/** Literals of another type without such a word before them. */
const homonyms: readonly (readonly [path: string, words: string, type: string])[] = [
  ["src/analysis/window/settleEstimates.ts", "blow cool vent", "EstimatedStep"],
  ["src/cell/layers/withStops.ts", "hold", "StopEffect"],
  ["src/cell/run/quarterHours.ts", "changeover stopped working", "DayUse"],
  ["src/cli/commands/check.ts", "check", "the name of a command"],
  ["src/cli/commands/commands.ts", "check", "the name of a command"],
  ["src/page/frame/scenarioChoice.ts", "drop", "the name of an event of the browser"],
  ["src/report/charts/circuitChart.ts", "cooling removal", "Fill"],
  ["src/report/explain/termTopics.ts", "parison removal", "the name of a term"],
  ["src/report/words/stateLook.ts", "stopped working", "StateKind"],
];

function isHomonym(path: string, words: string): boolean {
  return homonyms.some(([file, known]) => file === path && known.split(" ").includes(words));
}

/** The word before a literal, without the marks and other literals of a comparison, a union or a list. */
function wordBefore(tokens: readonly Token[], index: number): string {
  const before = tokens.slice(0, index).findLast(({ kind, text }) => kind !== "string" && !"=!:|[],".includes(text));
  return before?.text ?? "";
}

const isSought = (tokens: readonly Token[], index: number): boolean =>
  tokens[index - 1]?.text === "(" && /^(?:starts|ends)With$/.test(tokens[index - 2]?.text ?? "");

function faultOfText(tokens: readonly Token[], index: number, path: string): string | undefined {
  const { text } = tokens[index]!;
  const isLiteral = /^["']/.test(text);
  const words = isLiteral ? text.slice(1, -1) : text;
  if (pieces.has(words)) return "spells a part of a name";
  if (isSought(tokens, index) && [...names, ...pieces].some((name) => name.startsWith(words) || name.endsWith(words)))
    return "looks for a part of a name";
  const isChecked = typed.has(wordBefore(tokens, index)) || isHomonym(path, words);
  return isLiteral && names.has(words) && !isChecked ? "spells a name" : undefined;
}

/** A pattern with a name; names of one word count only as the whole pattern. */
function faultOfPattern(pattern: string): string | undefined {
  const isHeld = [...names, ...pieces].some((name) =>
    name.includes(" ") ? pattern.includes(name) : pattern.includes(`/${name}/`) || pattern.includes(`^${name}$`),
  );
  return isHeld ? "looks for a name by a pattern" : undefined;
}

function spelledNames(files: readonly SourceFile[]): readonly string[] {
  const searched = files.filter(({ path }) => !home.test(path) && !strangers.test(path));
  return searched.flatMap(({ path, text }) => {
    const tokens = codeTokensOf(text);
    return tokens.flatMap((token, index) => {
      const { kind, line } = token;
      const fault =
        kind === "pattern"
          ? faultOfPattern(token.text)
          : kind === "string"
            ? faultOfText(tokens, index, path)
            : undefined;
      return fault === undefined ? [] : [`${path}:${line} ${token.text} ${fault}`];
    });
  });
}

describe("a name of a state or a step", () => {
  it("is written in one place", () => {
    expect(spelledNames(codeUnder("src"))).toEqual([]);
  });

  it("is different from every role", () => {
    const roles = [...Object.keys(stepNames), ...Object.keys(subjectNames)];
    expect(roles.filter((role) => names.has(role) || !role.includes("."))).toEqual([]);
  });

  it("is a value of another type only in the listed files", () => {
    const files = new Map(
      codeUnder("src").map(({ path, text }) => [path, codeTokensOf(text).map((token) => token.text)]),
    );
    const used = ([path, words]: (typeof homonyms)[number]): boolean =>
      words.split(" ").every((word) => names.has(word) && files.get(path)?.includes(`"${word}"`) === true);
    expect(homonyms.filter((homonym) => !used(homonym))).toEqual([]);
  });
});

describe("the search for names", () => {
  it.each([
    ['if (step.name === "drop") return step;', "spells a name"],
    ['const state = "awaiting melt";', "spells a name"],
    ['const causes = { "holding a full shot": "no mold open and empty" };', "spells a name"],
    ['steps.findIndex(({ name }) => name === "let go");', "spells a name"],
    ['const zone = ["travel in", "close", "cut", "travel out"];', "spells a name"],
    ['const told = state === "stopped";', "spells a name"],
    ["const name = `walk to ${step}`;", "spells a part of a name"],
    ["const judged = `part ${cavity} judged`;", "spells a part of a name"],
    ['if (step.startsWith("shift to")) return shift;', "looks for a part of a name"],
    ['const isWalk = step.startsWith("walk to ");', "spells a part of a name"],
    ['const isCool = steps.some((step) => step.endsWith("ool"));', "looks for a part of a name"],
    ["const isOperator = /^operator [0-9]+$/u.test(name);", "looks for a name by a pattern"],
    ["const isClosing = /^closing$/u.test(state);", "looks for a name by a pattern"],
  ])("fails on %s", (text, fault) => {
    expect(spelledNames([{ path: "src/report/words/a.ts", text }])).toContainEqual(expect.stringContaining(fault));
  });

  it.each([
    ["src/cell/words/stepNames.ts", 'const names = { "mold.drop": "drop" };'],
    ["src/scenario/keys/stationKeys.ts", 'const after = ["drop", "close"];'],
    ["src/cell/run/a.ts", 'const isDrop = step.role === "mold.drop";'],
    ["src/cell/run/a.ts", 'const isAtWork = state.kind === "working"; // "parison drop"'],
    ["src/cell/run/a.ts", 'const words = "the drop of a parison";'],
    ["src/cell/layers/a.ts", 'const stops = { rule: "hold" };'],
    ["src/cell/run/quarterHours.ts", 'return "changeover";'],
  ])("passes in %s the text %s", (path, text) => {
    expect(spelledNames([{ path, text }])).toEqual([]);
  });
});
