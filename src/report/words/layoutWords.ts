// Sentences of a comparison: which layout is best, and how two of them differ.
import { bestLayouts, haveComparableCosts } from "#analysis/study/bestLayouts.ts";
import type { Comparison, ComparisonRow } from "#analysis/study/comparison.ts";
import { CELL } from "#analysis/replication/measures.ts";
import { COST_MEASURE } from "#analysis/indicators/costStudy.ts";
import type { Study } from "#analysis/study/study.ts";
import { measureOf } from "#analysis/study/summarizeMeasures.ts";
import { costComparison } from "./costWords.ts";
import { plainNumber, withInterval } from "./digits.ts";
import { headline } from "./madeWords.ts";
import { outputUnit, type OutputUnit } from "./outputUnit.ts";
import { gainRules, paybackSentence } from "./paybackWords.ts";

export const headlineRows = (rows: readonly ComparisonRow[]): readonly ComparisonRow[] =>
  rows.filter(({ resource, measure }) => resource === CELL && measure === headline);

/** The best layouts in output and cost, or the two in a sentence each; then payback. */
export function verdictSentences({ studies, rows, paybacks }: Comparison): readonly string[] {
  const unit = outputUnit(studies);
  const differences = headlineRows(rows).map((row) => differenceSentence(row, unit));
  const ofTwo = [...differences, ...costComparison(studies, rows)];
  const sentences = studies.length === 2 ? ofTwo : [...bestOutput(studies, unit), ...bestCost(studies)];
  const extra = paybacks.filter(({ extraInvestment }) => extraInvestment > 0);
  const rules = [...new Set(extra.map(({ rule }) => gainRules[rule]))];
  return [...sentences, ...mixNote(studies), ...paybackSentences({ studies, paybacks }), ...rules];
}

/** Good parts of different products are added up. */
export function mixNote(studies: readonly Pick<Study, "scenario">[]): readonly string[] {
  const mixes = studies.map(({ scenario }) =>
    [...new Set(scenario.stations.map(({ product, partMass }) => JSON.stringify([product, partMass])))]
      .toSorted()
      .join(),
  );
  return new Set(mixes).size > 1 ? ["The layouts do not make the same products: good parts count alike."] : [];
}

/** Of many layouts the columns of the table show it. */
function paybackSentences({ studies, paybacks }: Pick<Comparison, "studies" | "paybacks">): readonly string[] {
  if (studies.length === 2) return paybacks.map(paybackSentence);
  const soonest = paybacks
    .filter(({ verdict }) => verdict === "pays back")
    .toSorted((one, other) => (one.hours ?? 0) - (other.hours ?? 0))[0];
  if (soonest) return [`Soonest payback: ${paybackSentence(soonest)}`];
  return paybacks.some(({ extraInvestment }) => extraInvestment > 0)
    ? ["No payback is seen for any extra investment."]
    : [];
}

function bestOutput(studies: readonly Study[], unit: OutputUnit): readonly string[] {
  return bestWords(studies, {
    best: bestLayouts(studies, headline),
    value: (study) => {
      const found = measureOf(study.measures, CELL, headline);
      return found ? `${withInterval(found.interval, unit.factor)} ${unit.words}` : "";
    },
    words: { one: "makes the most", several: "make the most", unit: unit.words },
  });
}

function bestCost(studies: readonly Study[]): readonly string[] {
  if (studies.every(({ costs }) => !costs)) return [];
  if (!haveComparableCosts(studies)) return ["Costs are not compared: the layouts do not give the same items."];
  return bestWords(studies, {
    best: bestLayouts(studies, COST_MEASURE, -1),
    value: ({ costs }) =>
      costs?.total.perThousand ? `${withInterval(costs.total.perThousand)} ${costs.currency} per 1,000 good parts` : "",
    words: { one: "costs the least", several: "cost the least", unit: "cost" },
  });
}

interface Best {
  readonly best: readonly Study[];
  readonly value: (study: Study) => string;
  readonly words: { readonly one: string; readonly several: string; readonly unit: string };
}

const mostNames = 4;

function bestWords(studies: readonly Study[], { best, value, words }: Best): readonly string[] {
  const [first] = best;
  if (!first) return [];
  const name = first.scenario.name;
  const found = `${name} ${words.one}: ${value(first)}`;
  if (studies[0]?.replications === 1) return [`${found}, in one replication, which gives no interval.`];
  if (best.length === 1) return [`${found}, the best of ${studies.length} layouts with 95 % confidence.`];
  const others = best.slice(1).map((study) => study.scenario.name);
  const rest = others.length - mostNames;
  const named = rest > 1 ? `${others.slice(0, mostNames).join(", ")} and ${rest} more` : listed(others);
  return [`${found}; no difference in ${words.unit} is seen between it and ${named}.`];
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
}

/** "two-station makes 587.7 ± 0.2 good parts an hour more than one-station: 1.988 times as many." */
function differenceSentence(row: ComparisonRow, { factor, words }: OutputUnit): string {
  const { base, other, difference, simultaneousHalfWidth, ratio } = row;
  const change = withInterval({ mean: Math.abs(difference), halfWidth: simultaneousHalfWidth }, factor);
  const one = plainNumber(Math.abs(difference) * factor);
  const found = {
    more: `${other} makes ${change} ${words} more than ${base}`,
    less: `${other} makes ${change} ${words} less than ${base}`,
    "no difference seen": `No difference seen between ${other} and ${base} in ${words} (${change})`,
    "one pair, no interval": `${other} makes ${one} ${words} ${difference < 0 ? "less" : "more"} than ${base} in one replication, which gives no interval`,
  }[row.verdict];
  return `${found}${ratio === null ? "" : `: ${plainNumber(ratio)} times as many`}.`;
}

const mostCorrelations = 4;

/** How the scenarios were paired, and what their intervals hold. */
export function pairWords(differences: readonly ComparisonRow[]): readonly string[] {
  const [first] = differences;
  if (!first) return [];
  const known = differences.flatMap(({ correlation }) => (correlation === null ? [] : [correlation]));
  const shown = (value: number): string => value.toFixed(2);
  const range = `${shown(Math.min(...known))} to ${shown(Math.max(...known))}`;
  const values = known.length > mostCorrelations ? range : known.map(shown).join(", ");
  const correlation = known.length === 0 ? "" : `; correlation ${values}`;
  const together =
    first.comparisons > 1 && first.halfWidth !== null
      ? ` The ${first.comparisons} differences of a measure hold together (Bonferroni).`
      : "";
  return [`Replications are paired by common random numbers${correlation}.${together}`];
}
