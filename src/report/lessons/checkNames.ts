// Findings for names in a lesson that stand for nothing in it: cells, resources, moments, values, and placeholders in its texts.
import { didYouMean } from "#foundation/didYouMean.ts";
import { operatorNames, PLASTICATOR, RAM, VALVE, maskOf, ramOf } from "#cell/words/cycleNames.ts";
import type { Draft } from "#scenario/reading/reading.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { Finding, Path } from "#scenario/values/finding.ts";
import type { LessonCode } from "./lessonIssues.ts";
import type { WrittenLesson } from "./lessonKeys.ts";
import { placeholdersIn } from "./placeholders.ts";
import { resolveValue } from "./resolveValue.ts";

type WrittenQuestion = Draft<WrittenLesson>["question"];

export function checkNames(draft: Draft<WrittenLesson>, scenarios: ReadonlyMap<string, Scenario>): readonly Finding[] {
  const known: Known = {
    cell: Object.keys(draft.cells ?? {}),
    moment: Object.keys(draft.moments ?? {}),
    value: Object.keys(draft.values ?? {}),
  };
  return [
    ...momentFindings(draft, known, scenarios),
    ...valueFindings(draft, known, scenarios),
    ...(draft.stages ?? []).flatMap((stage, i) => stageFindings(stage, ["stages", i], known)),
    ...questionFindings(draft.question, ["question"], known),
  ];
}

type Stage = NonNullable<Draft<WrittenLesson>["stages"]>[number];

function stageFindings(stage: Stage, path: Path, known: Known): readonly Finding[] {
  const { from, at, until, look, predict, reveal, explain } = stage ?? {};
  return [
    ...[...named({ from, at, until })].flatMap(([key, name]) => unknown("moment", name, [...path, key], known)),
    ...[...named({ look, reveal, explain })].flatMap(([key, text]) => textFindings(text, [...path, key], known)),
    ...questionFindings(predict, [...path, "predict"], known),
  ];
}

type Known = Readonly<Record<"cell" | "moment" | "value", readonly string[]>>;

function unknown(kind: keyof Known, name: string | undefined, path: Path, known: Known): readonly Finding[] {
  if (name === undefined || known[kind].includes(name)) return [];
  return [strange(`This lesson has no ${kind} \`${name}\`.`, name, known[kind], path)];
}

function strange(message: string, name: string, known: readonly string[], path: Path): Finding {
  const meant = didYouMean(name, known);
  const expected = known.length === 0 ? "none, since there are none" : known.map((each) => `\`${each}\``).join(", ");
  const remedy = meant === undefined ? "Write one of the names, or add it." : `Did you mean \`${meant}\`?`;
  return { code: "lesson-name" satisfies LessonCode, message, expected, remedy, path };
}

function momentFindings(
  { moments = {} }: Draft<WrittenLesson>,
  known: Known,
  scenarios: ReadonlyMap<string, Scenario>,
): readonly Finding[] {
  const names = Object.keys(moments);
  return Object.entries(moments).flatMap(([name, spec]) => {
    const path = ["moments", name];
    const before = names.slice(0, names.indexOf(name));
    const late = spec?.after !== undefined && names.includes(spec.after) && !before.includes(spec.after);
    const message = `The moment \`${spec?.after}\` stands further down.`;
    return [
      ...patternFindings(spec, path, known, scenarios),
      ...unknown("moment", spec?.after, [...path, "after"], known),
      ...(late ? [strange(message, "", before, [...path, "after"])] : []),
    ];
  });
}

interface WrittenPattern {
  readonly cell?: string | undefined;
  readonly resource?: string | undefined;
  readonly station?: string | undefined;
}

function patternFindings(
  spec: WrittenPattern | undefined,
  path: Path,
  known: Known,
  scenarios: ReadonlyMap<string, Scenario>,
): readonly Finding[] {
  const { cell = known.cell[0], resource, station } = spec ?? {};
  const scenario = scenarios.get(cell ?? "");
  const resources = scenario && resourcesOf(scenario);
  const stations = scenario?.stations.map(({ name }) => name);
  const missing = (name: string | undefined, all: readonly string[] | undefined, key: string): readonly Finding[] =>
    name === undefined || all === undefined || all.includes(name)
      ? []
      : [strange(`The cell \`${cell}\` has no ${key} \`${name}\`.`, name, all, [...path, key])];
  return [
    ...unknown("cell", spec?.cell, [...path, "cell"], known),
    ...missing(resource, resources, "resource"),
    ...missing(station, stations, "station"),
  ];
}

function resourcesOf({ stations, takeaway = [], operators }: Scenario): readonly string[] {
  const names = stations.map(({ name }) => name);
  const servers = takeaway.flatMap(({ name, places }) =>
    Array.from({ length: places }, (_, i) => (places === 1 ? name : `${name} ${i + 1}`)),
  );
  return [
    PLASTICATOR,
    VALVE,
    ...names,
    ...operatorNames(operators),
    ...servers,
    RAM,
    ...names.map(ramOf),
    ...names.map(maskOf),
  ];
}

function valueFindings(
  { values = {} }: Draft<WrittenLesson>,
  known: Known,
  scenarios: ReadonlyMap<string, Scenario>,
): readonly Finding[] {
  const names = Object.keys(values);
  return Object.entries(values).flatMap(([name, written]) => {
    const path = ["values", name];
    const { value } = resolveValue(written ?? {}, path, known.cell[0] ?? "");
    if (value === undefined) return [];
    const at = [...path, value.by];
    if ("moment" in value) return unknown("moment", value.moment, at, known);
    if ("cell" in value) return unknown("cell", value.cell, at, known);
    if ("moments" in value) return value.moments.flatMap((each, i) => unknown("moment", each, [...at, i], known));
    if ("pattern" in value) return patternFindings(value.pattern, at, known, scenarios);
    // Only values further up, so that none depends on itself.
    const before = { ...known, value: names.slice(0, names.indexOf(name)) };
    return value.values.flatMap((each, i) => unknown("value", each, [...at, i], before));
  });
}

function questionFindings(question: WrittenQuestion, path: Path, known: Known): readonly Finding[] {
  const { ask, by, choices = [] } = question ?? {};
  return [
    ...textFindings(ask, [...path, "ask"], known),
    ...unknown("value", by, [...path, "by"], known),
    ...choices.flatMap((choice, i) => choiceFindings(choice, [...path, "choices", i], known)),
  ];
}

type WrittenChoice = NonNullable<NonNullable<WrittenQuestion>["choices"]>[number];

function choiceFindings(choice: WrittenChoice, path: Path, known: Known): readonly Finding[] {
  if (choice === undefined) return [];
  const { text, value, is, from, below, because } = choice;
  const keys = [text !== undefined && "text", value !== undefined && "value"].filter(Boolean).length;
  const conditions = [is, value, from ?? below].filter((each) => each !== undefined).length;
  const isWhole = keys === 1 && conditions === 1;
  const remedy = "Write `text` with `is`, with `from` or `below` or both, or write `value` alone.";
  const message = "This choice does not say when it is right.";
  return [
    ...(isWhole ? [] : [{ code: "lesson-choice" satisfies LessonCode, message, remedy, path }]),
    ...unknown("value", value, [...path, "value"], known),
    ...textFindings(text, [...path, "text"], known),
    ...textFindings(because, [...path, "because"], known),
  ];
}

function textFindings(text: string | undefined, path: Path, known: Known): readonly Finding[] {
  return placeholdersIn(text ?? "").flatMap((name) => unknown("value", name, path, known));
}

/** The entries that have a value. */
function named(texts: Readonly<Record<string, string | undefined>>): readonly (readonly [string, string])[] {
  return Object.entries(texts).flatMap(([key, text]) => (text === undefined ? [] : [[key, text] as const]));
}
