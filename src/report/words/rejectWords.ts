// Phrases for rejects and their reasons.
import { CELL } from "#analysis/replication/measures.ts";
import type { Study } from "#analysis/study/study.ts";
import { measureOf } from "#analysis/study/summarizeMeasures.ts";
import { percent } from "./digits.ts";

const prefix = "rejects: ";
const mostReasons = 3;
/** A smaller share would be shown as 0.0 %. */
const leastShare = 0.0005;

/** "1.3 % rejects: leak test 0.8 %, base share 0.5 %", or "no rejects"; undefined where the scenario defines no quality checks. */
export function rejectWords({ measures }: Pick<Study, "measures">): string | undefined {
  const parts = measureOf(measures, CELL, "parts per hour")?.interval.mean ?? 0;
  const reasons = measures.filter(({ resource, measure }) => resource === CELL && measure.startsWith(prefix));
  if (reasons.length === 0 || parts === 0) return undefined;
  const shares = reasons
    .map(({ measure, interval }) => ({ reason: measure.slice(prefix.length), share: interval.mean / parts }))
    .toSorted((one, other) => other.share - one.share);
  const all = shares.reduce((sum, { share }) => sum + share, 0);
  if (all === 0) return "no rejects";
  const named = shares
    .filter(({ share }, i) => i === 0 || share >= leastShare)
    .slice(0, mostReasons)
    .map(({ reason, share }) => `${reason} ${percent(share)}`);
  return `${percent(all)} rejects: ${named.join(", ")}`;
}
