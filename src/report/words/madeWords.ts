// The main sentence of an answer, and how the run behind it was made.
import { formatQuantity } from "#foundation/formatQuantity.ts";
import { CELL, productMeasure } from "#analysis/replication/measures.ts";
import type { Study } from "#analysis/study/study.ts";
import { observedSeconds, onShiftShare } from "#analysis/study/totals.ts";
import { measureOf } from "#analysis/study/summarizeMeasures.ts";
import { busyWords, paceSetter, resourceName, tiedWords } from "./bottleneckWords.ts";
import { grouped, percent, withInterval } from "./digits.ts";

export const headline = "good parts per hour";

/** "The cell makes 1,182.8 ± 0.3 good parts an hour; left and right (99 % busy) set the pace." */
export function madeSentence(study: Study): string {
  const pace = paceSetter(study);
  const parts = measureOf(study.measures, CELL, headline);
  if (!pace || !parts || parts.interval.mean === 0) return "The cell makes no part in this run.";
  const verb = pace.resources.length === 1 ? "sets" : "set";
  const name = resourceName(pace);
  const sets = `${name} (${busyWords(pace, study.states)}) ${verb} the pace${tiedWords(study)}.`;
  const total = totalWords(study);
  if (total === undefined) return `The cell makes ${withInterval(parts.interval)} good parts an hour; ${sets}`;
  return `The cell makes ${total}. ${name.charAt(0).toUpperCase()}${sets.slice(1)}`;
}

/** "86,977 good parts in the week; 9 of 10 such weeks make 86,180 to 87,688"; undefined without a calendar. */
function totalWords({ totals, scenario }: Study): string | undefined {
  const [all] = totals;
  if (!all) return undefined;
  return `${wholeNumber(all.parts.mean)} good parts in the ${periodOf(scenario.run)}${singleWords(all, scenario)}`;
}

/** "; 9 of 10 such weeks make 86,180 to 87,688"; nothing with one replication. */
function singleWords({ single }: Study["totals"][number], { run }: Study["scenario"]): string {
  if (!single) return "";
  return `; 9 of 10 such ${periodOf(run)}s make ${wholeNumber(single.low)} to ${wholeNumber(single.high)}`;
}

const wholeNumber = (value: number): string => grouped(Math.round(value));

const periods: Readonly<Record<number, string>> = { 86_400: "day", 604_800: "week", 31_536_000: "year" };

/** "week", "run of 10 d"; an s at the end makes it several. */
function periodOf(run: Study["scenario"]["run"]): string {
  const observed = observedSeconds(run);
  return periods[observed] ?? `${formatQuantity(observed, "time", { digits: 3 })} run`;
}

/** With a calendar: how sure the mean of the whole time is, apart from the range of single runs. */
export function meanRows({ totals, scenario, replications }: Study): readonly (readonly string[])[] {
  const [all] = totals;
  if (!all) return [];
  const period = periodOf(scenario.run);
  const many = replications === 1 ? `one ${period}` : `the mean of ${replications} ${period}s`;
  return [[`In the ${period}`, `${withInterval(all.parts)} good parts: ${many}`]];
}

/** Where the cell makes several products: one row each, with a calendar for the whole time. */
export function productRows({ measures, totals, scenario }: Study): readonly (readonly string[])[] {
  const { prefix } = productMeasure;
  const where = scenario.takeaway ? " past the checks at the mold" : "";
  return measures
    .filter(({ resource, measure }) => resource === CELL && measure.startsWith(prefix))
    .map(({ measure, interval }) => {
      const product = measure.slice(prefix.length);
      const total = totals.find((each) => each.product === product);
      if (!total) return [`  ${product}`, `${withInterval(interval)} an hour${where}`];
      const made = `${wholeNumber(total.parts.mean)} in the ${periodOf(scenario.run)}`;
      return [`  ${product}`, `${made}${where}${singleWords(total, scenario)}`];
    });
}

/** How the run was made, and what ± means. */
export function runWords({ scenario, replications }: Study): readonly string[] {
  const { length, seed, warmup } = scenario.run;
  const time = (value: number): string => formatQuantity(value, "time", { digits: 3 });
  const cut = warmup !== "auto" && warmup > 0 ? `, warm-up of ${time(warmup)} not counted` : "";
  const mean = scenario.calendar ? " of the mean" : "";
  const spread = replications > 1 ? `± is the 95 % confidence interval${mean}` : "one replication gives no interval";
  const runs = `${replications} ${replications === 1 ? "replication" : "replications"} of ${time(length)}`;
  return [`${runs}${cut}, seed "${seed}"; ${spread}.`];
}

/** "48 % of the time: 1,087 ± 3 good parts an hour, a shot every 6.63 ± 0.02 s". */
export function onShiftWords({ scenario, measures }: Study): string {
  const made = measureOf(measures, CELL, headline);
  if (!scenario.calendar || !made) return "";
  const share = onShiftShare(scenario);
  const pace = measureOf(measures, CELL, "seconds per shot");
  const every = pace === undefined ? "" : `, a shot every ${withInterval(pace.interval)} s`;
  return `${percent(share)} of the time: ${withInterval(made.interval, 1 / share)} good parts an hour${every}`;
}
