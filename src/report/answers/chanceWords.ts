// The chance of a due date as a count of such weeks or orders, with its interval.
import type { Order } from "#analysis/promise/order.ts";
import type { DueChance } from "#analysis/promise/orderStudy.ts";
import { grouped } from "#report/words/digits.ts";

const secondsOfDay = 86_400;
const daysOfWeek = 7;
/** A due date on the third to the seventh day after the start is one week of work. */
const shortestWeek = 3;

/** "About 9 of 10 such weeks end on time (95 % confidence: 83 to 96 of 100)." */
export function chanceWords(due: DueChance, order: Pick<Order, "due">): string {
  const { onTime, replications, share } = due;
  const days = (order.due ?? 0) / secondsOfDay;
  const such = days > shortestWeek && days <= daysOfWeek ? "such weeks" : "such orders";
  const [low, high] = [Math.round(100 * due.low), Math.round(100 * due.high)];
  const interval = `95 % confidence: ${low} to ${high} of 100`;
  const runs = grouped(replications);
  if (onTime === replications)
    return `All ${runs} runs are on time: at least ${low} of 100 ${such} with 95 % confidence.`;
  if (onTime === 0) return `None of ${runs} runs is on time: at most ${high} of 100 ${such} with 95 % confidence.`;
  return `About ${countOf(share)} ${such} end on time (${interval}).`;
}

/** Never all and never none, since some runs are on time and some are late. */
function countOf(share: number): string {
  const ofHundred = Math.min(99, Math.max(1, Math.round(100 * share)));
  return ofHundred % 10 === 0 ? `${ofHundred / 10} of 10` : `${ofHundred} of 100`;
}
