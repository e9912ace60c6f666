// The plain paragraphs on top of a report: what was found, and how sure it is.
import { formatQuantity } from "#foundation/formatQuantity.ts";
import type { ComparisonRow } from "#analysis/study/comparison.ts";
import type { Interval } from "#analysis/statistics/interval.ts";
import { CELL } from "#analysis/replication/measures.ts";
import type { Study } from "#analysis/study/study.ts";
import { measureOf } from "#analysis/study/summarizeMeasures.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { bottleneckWords, runnerUpWords } from "#report/words/bottleneckWords.ts";
import { differenceWords } from "./compareAnswer.ts";
import { costComparison, costWords } from "#report/words/costWords.ts";
import { percent, withInterval } from "#report/words/digits.ts";
import { idealWords } from "#report/words/idealWords.ts";
import { onShiftWords, runWords } from "./runAnswer.ts";
import { stateLook } from "#report/words/stateLook.ts";
import { rejectWords } from "#report/words/rejectWords.ts";
import { namesOf } from "#report/words/tradeWords.ts";

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
    .flatMap(differenceWords)
    .map((line) => line.trim());
  return [
    [...differences, ...costComparison(studies, rows)].join(" "),
    ...studies.map((study) => `${study.scenario.name}: ${madeWords(study)} ${bindingWords(study)}`),
    ...(base ? [sureWords(base)] : []),
  ];
}

function madeWords(study: Study): string {
  const { measures, ideal } = study;
  const parts = measureOf(measures, CELL, headline);
  const pace = measureOf(measures, CELL, "seconds per shot");
  if (!parts || !pace) return "The cell made nothing in the observed time.";
  if (study.scenario.calendar) return onCalendar(study, parts.interval);
  const held = `A shot took ${withInterval(pace.interval)} s; the ideal cycle is ${idealWords(ideal)}.`;
  return `The cell makes ${withInterval(parts.interval)} good parts an hour. ${held}`;
}

/** Seconds a shot would count the nights. */
function onCalendar(study: Study, { mean, halfWidth }: Pick<Interval, "mean" | "halfWidth">): string {
  const { run } = study.scenario;
  const hours = (run.length - (run.warmup === "auto" ? 0 : run.warmup)) / 3600;
  const all = withInterval({ mean: mean * hours, halfWidth: halfWidth === null ? null : halfWidth * hours });
  const made = `The cell makes ${all} good parts in ${formatQuantity(hours * 3600, "time", { digits: 3 })}`;
  const on = onShiftWords(study);
  return `${made}. It is on shift ${on}. The ideal cycle is ${idealWords(study.ideal)}.`;
}

function bindingWords(study: Study): string {
  return `What holds it back: ${bottleneckWords(study)}; next ${runnerUpWords(study)}.`;
}

const mostWaits = 4;

/** The longest waits and what they wait for, each kind of station once; a valve in neutral and a free operator lose nothing. */
export function waitingWords({ states, scenario }: Pick<Study, "states" | "scenario">): string {
  const waits = waitsOf(states, scenario)
    .filter(({ share }) => share >= leastShare)
    .toSorted((one, other) => other.share - one.share)
    .slice(0, mostWaits)
    .map(
      ({ resources, state, cause, share }) =>
        `${namesOf(resources)}: ${state} ${percent(share)}${cause === null ? "" : ` (${cause})`}`,
    );
  if (waits.length === 0) return "Nobody waits for longer than half a percent of the time.";
  const base = scenario.calendar ? ", of the time on shift" : "";
  return `The longest waits${base}: ${waits.join("; ")}.`;
}

interface Wait extends Pick<Study["states"][number], "state" | "cause"> {
  readonly resources: readonly string[];
  readonly share: number;
}

/** The same wait of stations that all have it is one, with the mean of their shares; who is off shift does not wait. */
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

function onShift(states: Study["states"], resource: string): number {
  const off = states.filter((state) => state.resource === resource && state.kind === "off");
  return Math.max(1 - off.reduce((sum, { share }) => sum + share.mean, 0), Number.EPSILON);
}
