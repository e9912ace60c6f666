// The paragraphs at the top of a report: the finding, then how sure it is.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import type { Comparison } from "#analysis/study/comparison.ts";
import { CELL } from "#analysis/replication/measures.ts";
import type { Study } from "#analysis/study/study.ts";
import { measureOf } from "#analysis/study/summarizeMeasures.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { assumptionWords } from "#report/words/assumptionWords.ts";
import { bottleneckWords, runnerUpWords, onShift } from "#report/words/bottleneckWords.ts";
import { headlineRows, pairWords, verdictSentences } from "#report/words/layoutWords.ts";
import { costWords } from "#report/words/costWords.ts";
import { mergedWarnings } from "#report/tables/mergedWarnings.ts";
import { percent, withInterval } from "#report/words/digits.ts";
import { idealSentence } from "#report/words/idealWords.ts";
import { madeSentence, onShiftWords, productRows, runWords } from "#report/words/madeWords.ts";
import { stateLook } from "#report/words/stateLook.ts";
import { measuredRows } from "#report/words/measuredWords.ts";
import { leftOutWords } from "#report/words/leftOutWords.ts";
import { rejectWords } from "#report/words/rejectWords.ts";
import { namesOf } from "#report/words/tradeWords.ts";

const leastShare = 0.005;

/** The finding of one study: the answer, what is behind it, and how sure it is. */
export function studyFinding(study: Study): readonly string[] {
  return [madeSentence(study), behindWords(study), sureWords([study])];
}

function foundWords(study: Study): string {
  return `${madeSentence(study)} ${behindWords(study)}`;
}

function behindWords(study: Study): string {
  const rejects = rejectWords(study);
  return [
    ...productRows(study).map(([product = "", made = ""]) => `${product.trim()}: ${made}.`),
    ...measuredRows(study).map(([, words = ""]) => `Measured: ${words}.`),
    paceWords(study),
    `Bottleneck: ${bottleneckWords(study)}; next ${runnerUpWords(study)}.`,
    ...(rejects === undefined ? [] : [`${rejects.charAt(0).toUpperCase()}${rejects.slice(1)}.`]),
    ...(study.costs ? [`Cost: ${costWords(study.costs)}.`] : []),
  ].join(" ");
}

function sureWords(studies: readonly Study[]): string {
  const runs = studies.slice(0, 1).flatMap(runWords);
  const scenarios = studies.map(({ scenario }) => scenario);
  const unanswered = scenarios.flatMap((scenario) => {
    const name = scenarios.length === 1 ? "" : `${scenario.name}: `;
    return leftOutWords(scenario)
      .filter((line) => line !== "")
      .map((line) => name + line);
  });
  return [...runs, ...assumptionWords(scenarios), ...unanswered].join(" ");
}

/** Of more layouts the tables of the report have the details. */
const mostFindings = 2;

/** The verdict, of two layouts each of them, of more what is outside the process window, then how sure all that is. */
export function comparisonFinding(comparison: Comparison, units: UnitSystem = "si"): readonly string[] {
  const { studies, rows } = comparison;
  const isMany = studies.length > mostFindings;
  return [
    verdictSentences(comparison).join(" "),
    ...(isMany
      ? windowFindings(studies, units)
      : studies.map((study) => `${study.scenario.name}: ${foundWords(study)}`)),
    [sureWords(studies), ...pairWords(headlineRows(rows))].join(" "),
  ];
}

function windowFindings(studies: readonly Study[], units: UnitSystem): readonly string[] {
  const lines = mergedWarnings(studies, units).filter((line) => line !== "");
  return lines.length === 0 ? [] : [lines.map((line) => line.trim()).join(" ")];
}

function paceWords({ measures, ideal, scenario, ...rest }: Study): string {
  const ideally = `${idealSentence(ideal)}.`;
  const pace = measureOf(measures, CELL, "seconds per shot");
  // With a calendar, seconds a shot would count the nights.
  if (scenario.calendar) return `On shift, ${onShiftWords({ ...rest, measures, ideal, scenario })}. ${ideally}`;
  return pace ? `A shot takes ${withInterval(pace.interval)} s. ${ideally}` : ideally;
}

const mostWaits = 4;

/** The longest waits and their causes, stations with the same wait together; a neutral valve and a free operator are not listed. */
export function waitingWords({ states, scenario }: Pick<Study, "states" | "scenario">): string {
  const waits = waitsOf(states, scenario)
    .filter(({ share }) => share >= leastShare)
    .toSorted((one, other) => other.share - one.share)
    .slice(0, mostWaits)
    .map(
      ({ resources, state, cause, share }) =>
        `${namesOf(resources)}: ${state} ${percent(share)}${cause === null ? "" : ` (${cause})`}`,
    );
  if (waits.length === 0) return "No resource waits for more than 0.5 % of the time.";
  const base = scenario.calendar ? ", of the time on shift" : "";
  return `Longest waits${base}: ${waits.join("; ")}.`;
}

interface Wait extends Pick<Study["states"][number], "state" | "cause"> {
  readonly resources: readonly string[];
  readonly share: number;
}

/** The same wait of several stations is one row with the mean of their shares, of the time on shift. */
function waitsOf(states: Study["states"], { stations }: Pick<Scenario, "stations">): readonly Wait[] {
  const names = stations.map(({ name }) => name);
  const waits = new Map<string, Wait>();
  for (const { resource, state, kind, cause, share } of states) {
    if (stateLook(state, kind).fill !== "wait") continue;
    const key = JSON.stringify([names.includes(resource) ? "" : resource, state]);
    const known = waits.get(key) ?? { resources: [], state, cause, share: 0 };
    const sum = known.share * known.resources.length + share.mean / onShift(states, resource);
    const resources = [...known.resources, resource];
    waits.set(key, { ...known, resources, share: sum / resources.length });
  }
  return [...waits.values()];
}
