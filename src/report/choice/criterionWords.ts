// The measure that decides a choice, in words and in the unit in which it is shown.
import type { Choice } from "#analysis/choice/choiceResult.ts";
import { usualCriterion } from "#analysis/choice/criterion.ts";
import { COST_AN_HOUR, COST_MEASURE } from "#analysis/indicators/costStudy.ts";
import { CELL } from "#analysis/replication/measures.ts";
import type { Interval } from "#analysis/statistics/interval.ts";
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { grouped, withInterval } from "#report/words/digits.ts";
import { outputUnit, type OutputUnit } from "#report/words/outputUnit.ts";
import { shownUnit } from "#report/words/shownUnits.ts";

export interface CriterionWords {
  /** From the unit of the measure to that shown. */
  readonly factor: number;
  /** Behind a number: "good parts an hour", "EUR per 1,000 good parts", "s". */
  readonly unit: string;
  /** Before a number where the unit does not say it: "seconds per shot". */
  readonly name: string;
}

export function criterionWords(choice: Choice, units: UnitSystem): CriterionWords {
  const { resource, measure, unit } = choice.goal.criterion;
  if (measure === usualCriterion && resource === CELL) {
    const { factor, words } = partsUnit(choice);
    return { factor, unit: words, name: "" };
  }
  if (measure === COST_MEASURE) return { factor: 1, unit: `${unit} per 1,000 good parts`, name: "" };
  if (measure === COST_AN_HOUR) return { factor: 1, unit: `${unit} an hour`, name: "" };
  const name = resource === CELL ? measure : `${measure} of ${resource}`;
  if (unit === "share") return { factor: 100, unit: "%", name };
  const shown = shownUnit(unit, choice.ranking[0]?.value?.mean ?? 0, units);
  return { factor: shown.difference(1), unit: shown.symbol, name };
}

export function partsUnit({ ranking }: Choice): OutputUnit {
  return outputUnit(ranking.map(({ layout }) => layout));
}

/** "1,142.3 ± 0.2"; a value that does not vary has one digit more than usual, because layouts may differ by little. */
export function intervalWords(interval: Pick<Interval, "mean" | "halfWidth">, factor = 1): string {
  const isConstant = interval.halfWidth === null || interval.halfWidth === 0;
  return isConstant ? grouped(Number((interval.mean * factor).toPrecision(5))) : withInterval(interval, factor);
}

/** A smaller part of a value is of no use in a sentence. */
const finest = 1e-4;

/** With the digits that the interval supports, without the interval; at most about five. */
export function meanWords({ mean, halfWidth }: Pick<Interval, "mean" | "halfWidth">, factor = 1): string {
  const half = halfWidth === null || halfWidth === 0 ? halfWidth : Math.max(halfWidth, finest * Math.abs(mean));
  return intervalWords({ mean, halfWidth: half }, factor).split(" ± ")[0]!;
}
