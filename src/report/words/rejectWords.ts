// Says how many parts are refused and why, or that nobody looks.
import { CELL } from "#analysis/replication/measures.ts";
import type { Study } from "#analysis/study/study.ts";
import { measureOf } from "#analysis/study/summarizeMeasures.ts";
import { percent } from "./digits.ts";

const NOTHING_JUDGED = "nothing is judged: every part counts as good";
const prefix = "rejects: ";
const mostReasons = 3;
/** Less would be said as 0.0 %. */
const leastShare = 0.0005;

/** "1.3 % of the parts are rejects: leak test 0.8 %, base share 0.5 %". */
export function rejectWords({ measures }: Pick<Study, "measures">): string {
  const parts = measureOf(measures, CELL, "parts per hour")?.interval.mean ?? 0;
  const reasons = measures.filter(({ resource, measure }) => resource === CELL && measure.startsWith(prefix));
  if (reasons.length === 0 || parts === 0) return NOTHING_JUDGED;
  const shares = reasons
    .map(({ measure, interval }) => ({ reason: measure.slice(prefix.length), share: interval.mean / parts }))
    .toSorted((one, other) => other.share - one.share);
  const all = shares.reduce((sum, { share }) => sum + share, 0);
  const named = shares
    .filter(({ share }, i) => i === 0 || share >= leastShare)
    .slice(0, mostReasons)
    .map(({ reason, share }) => `${reason} ${percent(share)}`);
  return `${percent(all)} of the parts are rejects: ${named.join(", ")}`;
}
