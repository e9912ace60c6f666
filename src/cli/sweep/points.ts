// The points of a sweep: all combinations of the varied values, and the share of them that one call makes.
import type { Fault } from "#foundation/fault.ts";
import type { Issue, IssueMeaning } from "#foundation/issue.ts";
import { mostPoints, parseVaried, tooMany, type Varied } from "#scenario/reading/variedValues.ts";
import type { Options } from "#cli/call/command.ts";

export const sweepIssueCodes = {
  "vary-missing": ["a sweep varies nothing", "Add --vary with a path and its values."],
  "shard-form": [
    "a --shard is not a share such as 1/3",
    "Write the number of the share, a slash and how many there are.",
  ],
} as const satisfies Readonly<Record<string, IssueMeaning>>;

export interface Point {
  /** Within the whole sweep, from 0. */
  readonly index: number;
  readonly values: readonly string[];
}

export interface Grid {
  readonly paths: readonly string[];
  /** Of this call. */
  readonly points: readonly Point[];
  /** Of all calls. */
  readonly total: number;
  readonly pointAt: (index: number) => Point;
}

interface Shard {
  readonly number: number;
  readonly of: number;
}

export function readGrid({ vary = [], shard: share }: Options): Grid | readonly Issue[] {
  const parsed = vary.map((text) => ({ text, read: parseVaried(text) }));
  const varied = parsed.flatMap(({ read }) => ("code" in read ? [] : [read]));
  const issues = parsed.flatMap(({ text, read }) => ("code" in read ? [issueOf(read, "--vary", text)] : []));
  const shard = readShard(share);
  if ("code" in shard) issues.push(issueOf(shard, "--shard", share));
  if (vary.length === 0) issues.push(issueOf(missing, "--vary"));
  const paths = varied.map(({ path }) => path);
  const twice = paths.find((path, i) => paths.indexOf(path) < i);
  if (twice !== undefined) issues.push(issueOf(pathTwice, "--vary", twice));
  const total = varied.reduce((product, { values }) => product * values.length, 1);
  if (total > mostPoints) issues.push(issueOf(tooMany(total), "--vary"));
  if (issues.length > 0 || "code" in shard) return issues;
  const pointAt = (index: number): Point => ({ index, values: valuesAt(varied, index) });
  const indexes = Array.from({ length: total }, (_, i) => i).filter((i) => i % shard.of === shard.number - 1);
  return { paths, total, points: indexes.map(pointAt), pointAt };
}

/** The last path varies fastest. */
function valuesAt(varied: readonly Varied[], index: number): readonly string[] {
  let rest = index;
  return varied
    .toReversed()
    .map(({ values }) => {
      const value = values[rest % values.length]!;
      rest = Math.floor(rest / values.length);
      return value;
    })
    .toReversed();
}

const mostShards = 10_000;

function readShard(text: string | undefined): Shard | Fault {
  if (text === undefined) return { number: 1, of: 1 };
  const [, number, of] = /^(\d+)\/(\d+)$/u.exec(text.trim()) ?? [];
  const shard = { number: Number(number), of: Number(of) };
  if (shard.number >= 1 && shard.number <= shard.of && shard.of <= mostShards) return shard;
  return {
    code: "shard-form",
    message: `"${text}" is not a share of the points.`,
    expected: `a number, a slash and how many shares there are, such as 1/3; at most ${mostShards}`,
    remedy: "Write the shares of three calls as 1/3, 2/3 and 3/3.",
  };
}

const missing: Fault = {
  code: "vary-missing",
  message: "The sweep varies nothing.",
  expected: "--vary with a path and its values",
  remedy: 'Add --vary "stations.*.steps.cool=7..10 s by 0.5 s", for example.',
};
const pathTwice: Fault = {
  code: "vary-twice",
  message: "A path is varied twice.",
  expected: "each path once",
  remedy: "Write all of its values in one --vary, separated by commas.",
};

function issueOf(fault: Fault, option: string, value?: string): Issue {
  return { ...fault, severity: "error", fate: "file", option, path: "", ...(value === undefined ? {} : { value }) };
}

/** The values of a point as settings, `path=value`. */
export function settingsOfPoint(paths: readonly string[], { values }: Point): readonly string[] {
  return paths.map((path, i) => `${path}=${values[i] ?? ""}`);
}
