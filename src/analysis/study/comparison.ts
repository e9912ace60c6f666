// Compares scenarios with a base, measure by measure, with replications paired by common random numbers.
import type { Scenario } from "#scenario/scenario.ts";
import { areComparable, COST_AN_HOUR, COST_MEASURE } from "#analysis/indicators/costStudy.ts";
import { pairedDifference } from "#analysis/statistics/pairedDifference.ts";
import type { Pair } from "./against.ts";
import type { Payback } from "./payback.ts";
import type { Study } from "./study.ts";
import type { SettledScenario } from "#analysis/statistics/warmUpSearch.ts";
import { differenceOfTerms, errorOf } from "./controlled.ts";
import { measureOf, type MeasureSummary } from "./summarizeMeasures.ts";

export type Verdict = "more" | "less" | "no difference seen" | "one pair, no interval";

export interface ComparisonRow {
  readonly base: string;
  readonly other: string;
  readonly resource: string;
  readonly measure: string;
  readonly unit: string;
  /** Mean of other − base. */
  readonly difference: number;
  readonly halfWidth: number | null;
  /** Holds for all pairs of this measure at once (Bonferroni). */
  readonly simultaneousHalfWidth: number | null;
  /** How many pairs hold at once. */
  readonly comparisons: number;
  /** Mean of the other / mean of the base; null where the base is 0. */
  readonly ratio: number | null;
  readonly pairs: number;
  readonly correlation: number | null;
  /** Judged by the simultaneous interval. */
  readonly verdict: Verdict;
}

/** All that a comparison found. */
export interface Comparison {
  /** In the order of the call. */
  readonly studies: readonly Study[];
  readonly rows: readonly ComparisonRow[];
  readonly paybacks: readonly Payback[];
}

/** The scenarios with the base's seed, length and number of replications, which common random numbers need. */
export function comparableScenarios(scenarios: readonly Scenario[]): readonly Scenario[] {
  const [base] = scenarios;
  if (!base) return [];
  const { seed, length, replications } = base.run;
  return scenarios.map((scenario) => ({ ...scenario, run: { ...scenario.run, seed, length, replications } }));
}

/** Sets the longest run and the longest warm-up for all scenarios, so that pairs cover the same time. */
export function overOneSpan(settled: readonly SettledScenario[]): readonly SettledScenario[] {
  const runs = settled.map(({ scenario }) => scenario.run);
  const length = Math.max(...runs.map((run) => run.length));
  const warmup = Math.max(...runs.map((run) => (run.warmup === "auto" ? 0 : run.warmup)));
  return settled.map(({ scenario, warnings }) => ({
    scenario: { ...scenario, run: { ...scenario.run, length, warmup } },
    warnings,
  }));
}

/** Each of the others against the base. */
export function compareStudies(base: Study, others: readonly Study[]): readonly ComparisonRow[] {
  return comparePairs(others.map((other) => [base, other]));
}

/** Every measure that both sides have for a resource of the same name; costs only where they are sums of the same items. */
export function comparePairs(pairs: readonly Pair[]): readonly ComparisonRow[] {
  return pairs.flatMap(([base, other]) =>
    base.measures.flatMap((measure) => {
      if (isCost(measure) && !areComparable(base.costs, other.costs)) return [];
      const counterpart = measureOf(other.measures, measure.resource, measure.measure);
      const row = counterpart && compareMeasure(measure, counterpart, pairs.length);
      return row ? [{ base: base.scenario.name, other: other.scenario.name, ...row }] : [];
    }),
  );
}

const isCost = ({ measure }: MeasureSummary): boolean => measure === COST_MEASURE || measure === COST_AN_HOUR;

function compareMeasure(
  base: MeasureSummary,
  other: MeasureSummary,
  comparisons: number,
): Omit<ComparisonRow, "base" | "other"> | null {
  const values = other.controlled?.values ?? other.values;
  const pairs = (base.controlled?.values ?? base.values).flatMap((value, i) => {
    const counterpart = values[i] ?? null;
    return value === null || counterpart === null ? [] : [[value, counterpart] as const];
  });
  if (pairs.length === 0) return null;
  const found = pairedDifference(
    pairs.map(([, second]) => second),
    pairs.map(([first]) => first),
    { comparisons, unseen: errorOf(differenceOfTerms(base.controlled?.terms, other.controlled?.terms)) },
  );
  return {
    resource: base.resource,
    measure: base.measure,
    unit: base.unit,
    difference: found.mean,
    halfWidth: found.halfWidth,
    simultaneousHalfWidth: found.simultaneousHalfWidth,
    comparisons,
    ratio: base.interval.mean === 0 ? null : other.interval.mean / base.interval.mean,
    pairs: pairs.length,
    correlation: found.correlation,
    verdict: verdictOf(found.mean, found.simultaneousHalfWidth),
  };
}

function verdictOf(difference: number, halfWidth: number | null): Verdict {
  if (halfWidth === null) return "one pair, no interval";
  if (Math.abs(difference) <= halfWidth) return "no difference seen";
  return difference > 0 ? "more" : "less";
}
