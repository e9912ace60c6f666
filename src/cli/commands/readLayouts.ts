// Reads the layouts that a call of `choose` names: files with their options and variants, or the points of varied values.
import { layoutOf, type Layout } from "#analysis/choice/layout.ts";
import type { LeftOutLayout } from "#report/tables/asked/chooseTable.ts";
import type { Issue } from "#foundation/issue.ts";
import { optionSetCount, optionSets } from "#scenario/optionSets.ts";
import type { OptionSpec, Scenario } from "#scenario/scenario.ts";
import { chooseIssue } from "#cli/choose/chooseIssues.ts";
import type { Options } from "#cli/call/command.ts";
import { parseVariant, variantIssues, type Variant } from "#cli/call/variants.ts";
import type { Host } from "#cli/machine/host.ts";
import { readGrid, type Grid, type Point } from "#cli/sweep/points.ts";
import { readFile, scenarioName, type Reading } from "./loadScenarios.ts";
import { pointReader } from "./readPoints.ts";

export interface ReadLayouts {
  readonly layouts: readonly Layout[];
  /** Points that cannot run. */
  readonly leftOut: readonly LeftOutLayout[];
  /** With an error there is nothing to choose from. */
  readonly issues: readonly Issue[];
}

const mostLayouts = 500;

export function readLayouts(files: readonly string[], options: Options, host: Host): ReadLayouts {
  const isVaried = options.vary !== undefined || options.best === true;
  const read = (isVaried ? fromPoints : fromFiles)(files, options, host);
  if (read.issues.some(({ severity }) => severity === "error")) return read;
  const names = read.layouts.map(({ scenario }) => scenario.name);
  const twice = new Set(names.filter((name, i) => names.indexOf(name) < i));
  const count = names.length + read.leftOut.length;
  const issues = [
    ...(count === 1 ? [chooseIssue("choose-one", `There is only ${names[0] ?? "one layout"} to choose from.`)] : []),
    ...(count > mostLayouts ? [tooMany(count)] : []),
    ...[...twice].map(sameName),
  ];
  return { ...read, issues: [...read.issues, ...issues] };
}

function tooMany(count: number): Issue {
  return chooseIssue("choose-many", `There are ${count} layouts to choose from; the most are ${mostLayouts}.`);
}

function sameName(name: string): Issue {
  const remedy = "Rename one of them: a layout is called as its file, its option or its variant.";
  return {
    code: "same-name",
    severity: "error",
    path: "",
    message: `Two layouts are called ${name}.`,
    remedy,
    fate: "file",
  };
}

interface ReadLayout {
  readonly reading: Reading;
  readonly chosen: readonly OptionSpec[];
}

/** Each file, then its options, then the variants of all files. */
function fromFiles(files: readonly string[], options: Options, host: Host): ReadLayouts {
  const variants = (options.variant ?? []).map(parseVariant);
  const found = files.flatMap((file) => layoutsOfFile(file, { variants, isAlone: files.length === 1, options, host }));
  return {
    layouts: found.flatMap(({ reading: { scenario }, chosen }) => (scenario ? [layoutOf(scenario, chosen)] : [])),
    leftOut: [],
    issues: [...variantIssues(variants), ...found.flatMap(({ reading }) => reading.issues)],
  };
}

interface Among {
  readonly variants: readonly Variant[];
  /** The layouts of the only file need not name it. */
  readonly isAlone: boolean;
  readonly options: Options;
  readonly host: Host;
}

/** The layout of a file with options, without any of them. */
const asItStands = "as it stands";

function layoutsOfFile(file: string, { variants, isAlone, options, host }: Among): readonly ReadLayout[] {
  const own = scenarioName(file);
  const base = readFile({ file, name: own }, options, host);
  const written = base.scenario?.options ?? [];
  const count = optionSetCount(written);
  if (count > mostLayouts) return [{ reading: { ...base, issues: [...base.issues, tooMany(count)] }, chosen: [] }];
  const sets = optionSets(written).slice(1);
  const known = new Set(base.issues.map(keyOf));
  const readWith = (variant: Variant): Reading => {
    const name = isAlone ? variant.name : `${own} ${variant.name}`;
    return withoutKnown(readFile({ file, name, variant }, options, host), known, variant.name);
  };
  const isNamed = isAlone && sets.length > 0 && base.scenario !== undefined;
  return [
    { reading: isNamed ? { ...base, scenario: { ...base.scenario, name: asItStands } } : base, chosen: [] },
    ...sets.map((chosen) => {
      const name = chosen.map((option) => option.name).join(" + ");
      const set = chosen.flatMap(({ settings }) => settings);
      return { reading: readWith({ name, set, text: name, option: `${file} option "${name}"` }), chosen };
    }),
    ...variants.map((variant) => ({ reading: readWith(variant), chosen: [] })),
  ];
}

const keyOf = ({ code, path, message, value }: Issue): string => JSON.stringify([code, path, message, value]);

/** What the file or an option itself causes is reported once. */
function withoutKnown({ issues, ...reading }: Reading, known: Set<string>, name: string): Reading {
  const own = issues.filter((issue) => !known.has(keyOf(issue)));
  for (const issue of own) known.add(keyOf(issue));
  return { ...reading, issues: own.map((issue) => ({ ...issue, message: `With "${name}": ${issue.message}` })) };
}

function fromPoints(files: readonly string[], options: Options, host: Host): ReadLayouts {
  const [file = "", ...others] = files;
  const { shard: _, ...whole } = options;
  const grid = readGrid(whole);
  const isMixed = others.length > 0 || options.variant !== undefined;
  const mixed = isMixed ? [chooseIssue("choose-vary", "Points of --vary stand beside other layouts.")] : [];
  const contents = files.map((each) => host.readText(each));
  const unread = contents.flatMap((content) => ("issue" in content ? [content.issue] : []));
  if (!("paths" in grid) || isMixed || unread.length > 0) {
    return { layouts: [], leftOut: [], issues: [...mixed, ...("paths" in grid ? [] : grid), ...unread] };
  }
  if (grid.total > mostLayouts) return { layouts: [], leftOut: [], issues: [tooMany(grid.total)] };
  const read = pointReader(file, grid, options, host);
  const points = grid.points.map((point) => ({ ...read(point), name: pointName(grid, point) }));
  const runnable = points.flatMap(({ scenario, name }): readonly Scenario[] =>
    scenario ? [{ ...scenario, name }] : [],
  );
  const refused = points.filter(({ scenario }) => scenario === undefined);
  const issues = runnable.length === 0 ? (refused[0]?.issues ?? []) : firstWarnings(points);
  return {
    layouts: runnable.map((scenario) => layoutOf(scenario, [])),
    leftOut: refused.map(({ name, issues: found }) => ({ name, reason: reasonOf(found) })),
    issues,
  };
}

function reasonOf(issues: readonly Issue[]): string {
  return issues.find(({ severity }) => severity === "error")?.message ?? "";
}

/** The same warning of many points is reported once. */
function firstWarnings(points: readonly { readonly issues: readonly Issue[] }[]): readonly Issue[] {
  const warnings = points.flatMap(({ issues }) => issues).filter(({ severity }) => severity !== "error");
  const texts = warnings.map(({ code, message }) => JSON.stringify([code, message]));
  return warnings.filter((_, i) => texts.indexOf(texts[i]!) === i);
}

/** `cool 7 s, count 2`; with whole paths where their last keys are the same. */
function pointName({ paths }: Grid, { values }: Point): string {
  const last = paths.map((path) => path.split(".").at(-1) ?? path);
  const names = new Set(last).size === paths.length ? last : paths;
  return names.map((name, i) => `${name} ${values[i] ?? ""}`).join(", ");
}
