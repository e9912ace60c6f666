// The plain paragraphs on top of a report: what was found, and how sure it is.
import type { ComparisonRow } from "#analysis/comparison.ts";
import { CELL } from "#analysis/measures.ts";
import type { Study } from "#analysis/study.ts";
import { measureOf } from "#analysis/summarizeMeasures.ts";
import { bottleneckWords, runnerUpWords } from "./bottleneckWords.ts";
import { differenceWords } from "./compareAnswer.ts";
import { costComparison, costWords } from "./costWords.ts";
import { percent, withInterval } from "./digits.ts";
import { idealWords } from "./idealWords.ts";
import { runWords } from "./runAnswer.ts";
import { stateLook } from "./stateLook.ts";
import { rejectWords } from "./rejectWords.ts";
import { ownerName } from "./tradeWords.ts";

const headline = "good parts per hour";
const leastShare = 0.005;

/** What was found; how sure it is. */
export function studyFinding(study: Study): readonly string[] {
  const cost = study.costs ? ` Cost: ${costWords(study.costs)}.` : "";
  return [`${madeWords(study)} ${bindingWords(study)}${cost}`, sureWords(study)];
}

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;

function sureWords(study: Study): string {
  return [...runWords(study), sentence(rejectWords(study))].join(" ");
}

/** The differences, then each scenario, then how sure all that is. */
export function comparisonFinding(studies: readonly Study[], rows: readonly ComparisonRow[]): readonly string[] {
  const [base] = studies;
  const differences = rows
    .filter(({ resource, measure }) => resource === CELL && measure === headline)
    .flatMap(differenceWords);
  return [
    [...differences, ...costComparison(studies, rows)].join(" "),
    ...studies.map((study) => `${study.scenario.name}: ${madeWords(study)} ${bindingWords(study)}`),
    ...(base ? [sureWords(base)] : []),
  ];
}

function madeWords({ measures, ideal }: Study): string {
  const parts = measureOf(measures, CELL, headline);
  const pace = measureOf(measures, CELL, "seconds per shot");
  if (!parts || !pace) return "The cell made nothing in the observed time.";
  const held = `A shot took ${withInterval(pace.interval)} s; the ideal cycle is ${idealWords(ideal)}.`;
  return `The cell makes ${withInterval(parts.interval)} good parts an hour. ${held}`;
}

function bindingWords(study: Study): string {
  return `What holds it back: ${bottleneckWords(study)}; next ${runnerUpWords(study)}.`;
}

const mostWaits = 4;

/** The longest waits and what they wait for; a valve in neutral and a free operator lose nothing. */
export function waitingWords(states: Study["states"]): string {
  const waits = states
    .filter(({ state, kind, share }) => stateLook(state, kind).fill === "wait" && share.mean >= leastShare)
    .toSorted((one, other) => other.share.mean - one.share.mean)
    .slice(0, mostWaits)
    .map(
      ({ resource, state, cause, share }) =>
        `${ownerName(resource)}: ${state} ${percent(share.mean)}${cause === null ? "" : ` (${cause})`}`,
    );
  return waits.length === 0
    ? "Nobody waits for longer than half a percent of the time."
    : `The longest waits: ${waits.join("; ")}.`;
}
