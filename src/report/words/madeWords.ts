// The main sentence of an answer, and how the run behind it was made.
import { formatQuantity } from "#foundation/formatQuantity.ts";
import { CELL } from "#analysis/replication/measures.ts";
import type { Study } from "#analysis/study/study.ts";
import { measureOf } from "#analysis/study/summarizeMeasures.ts";
import { busyWords, paceSetter, resourceName, tiedWords } from "./bottleneckWords.ts";
import { percent, withInterval } from "./digits.ts";

export const headline = "good parts per hour";
const secondsPerHour = 3600;

/** "The cell makes 1,182.8 ± 0.3 good parts an hour; left and right (99 % busy) set the pace." */
export function madeSentence(study: Study): string {
  const pace = paceSetter(study);
  const made = madeWords(study);
  if (!pace || made === undefined) return "The cell makes no part in this run.";
  const verb = pace.resources.length === 1 ? "sets" : "set";
  return `The cell makes ${made}; ${resourceName(pace)} (${busyWords(pace)}) ${verb} the pace${tiedWords(study)}.`;
}

/** "1,182.8 ± 0.3 good parts an hour"; with a calendar the parts of the whole run, since an hour would mix work and nights. */
function madeWords({ measures, scenario }: Study): string | undefined {
  const parts = measureOf(measures, CELL, headline);
  if (!parts || parts.interval.mean === 0) return undefined;
  if (!scenario.calendar) return `${withInterval(parts.interval)} good parts an hour`;
  const observed = observedSeconds(scenario.run);
  const hours = observed / secondsPerHour;
  return `${withInterval(parts.interval, hours)} good parts in ${formatQuantity(observed, "time", { digits: 3 })}`;
}

const observedSeconds = ({ length, warmup }: Study["scenario"]["run"]): number =>
  length - (warmup === "auto" ? 0 : warmup);

/** How the run was made, and what ± means. */
export function runWords({ scenario, replications }: Study): readonly string[] {
  const { length, seed, warmup } = scenario.run;
  const time = (value: number): string => formatQuantity(value, "time", { digits: 3 });
  const cut = warmup !== "auto" && warmup > 0 ? `, warm-up of ${time(warmup)} not counted` : "";
  const spread = replications > 1 ? "± is the 95 % confidence interval" : "one replication gives no interval";
  const runs = `${replications} ${replications === 1 ? "replication" : "replications"} of ${time(length)}`;
  return [`${runs}${cut}, seed "${seed}"; ${spread}.`];
}

/** "48 % of the time, 1,087 ± 3 good parts an hour on shift". */
export function onShiftWords({ scenario, measures }: Study): string {
  const { calendar, run } = scenario;
  const made = measureOf(measures, CELL, headline);
  if (!calendar || !made) return "";
  const off = calendar.off.reduce((sum, { from, until }) => sum + until - from, 0);
  const share = 1 - off / run.length;
  return `${percent(share)} of the time, ${withInterval(made.interval, 1 / share)} good parts an hour on shift`;
}
