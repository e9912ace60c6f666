// The one measure by which a written value is found.
import type { Finding, Path } from "#scenario/values/finding.ts";
import type { Draft } from "#scenario/reading/reading.ts";
import type { CellMeasure, MomentMeasure, PairMeasure, PatternMeasure, SpellPattern, ValueSpec } from "./lesson.ts";
import type { LessonCode } from "./lessonIssues.ts";
import type { WrittenPattern, WrittenValue } from "./lessonKeys.ts";

const ofMoment = {
  start: true,
  duration: true,
  resource: true,
  state: true,
  next: true,
  startedBy: true,
  freedBy: true,
  hang: true,
  sag: true,
  timeAtHeat: true,
} as const satisfies Readonly<Record<MomentMeasure, true>>;
const ofPattern = {
  count: true,
  mean: true,
  shortest: true,
  longest: true,
  total: true,
  share: true,
} as const satisfies Readonly<Record<PatternMeasure, true>>;
const ofCell = {
  secondsPerShot: true,
  shotsPerHour: true,
  partsPerHour: true,
  idealSecondsPerShot: true,
  pace: true,
} as const satisfies Readonly<Record<CellMeasure, true>>;
const ofPair = { ratio: true, shareOf: true, difference: true } as const satisfies Readonly<Record<PairMeasure, true>>;

const isIn = <Key extends string>(keys: Readonly<Record<Key, true>>, key: string): key is Key =>
  Object.hasOwn(keys, key);

/** `path` is that of the value; `usual` the cell of a pattern that names none. */
export function resolveValue(
  written: Draft<WrittenValue>,
  path: Path,
  usual: string,
): { readonly value?: ValueSpec; readonly findings: readonly Finding[] } {
  const measures = Object.entries(written).filter(([, what]) => what !== undefined);
  const [first, ...others] = measures;
  const code: LessonCode = "lesson-value";
  const remedy = "Write one measure, such as `{ duration: first drop }`.";
  if (first === undefined || others.length > 0) {
    const message = first === undefined ? "The value has no measure." : "The value has several measures.";
    return { findings: [{ code, message, remedy, path, at: "key" }] };
  }
  const value = specOf(first[0], first[1], usual);
  if (value !== undefined) return { value, findings: [] };
  const message = `\`${first[0]}\` needs two names.`;
  return { findings: [{ code, message, remedy: `Write \`${first[0]}: [one, other]\`.`, path: [...path, first[0]] }] };
}

function specOf(by: string, what: unknown, usual: string): ValueSpec | undefined {
  if (isIn(ofMoment, by)) return { by, moment: what as string };
  if (isIn(ofCell, by)) return { by, cell: what as string };
  if (isIn(ofPattern, by)) return { by, pattern: resolvePattern(what as Draft<WrittenPattern>, usual) };
  const names = (what as readonly (string | undefined)[]).filter((name) => name !== undefined);
  const [one, other] = names;
  if (one === undefined || other === undefined || names.length > 2) return undefined;
  return isIn(ofPair, by) ? { by, values: [one, other] } : { by: "between", moments: [one, other] };
}

export function resolvePattern(written: Draft<WrittenPattern>, usual: string): SpellPattern {
  const { cell = usual, resource, of, state, kind, station, shot, lasts } = written;
  return {
    cell,
    ...(resource === undefined ? {} : { resource }),
    ...(of === undefined ? {} : { of }),
    ...(state === undefined ? {} : { state }),
    ...(kind === undefined ? {} : { kind }),
    ...(station === undefined ? {} : { station }),
    ...(shot === undefined ? {} : { shot }),
    ...(lasts === undefined ? {} : { lasts }),
  };
}
