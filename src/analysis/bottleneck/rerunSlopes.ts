// The effect of the time of a step on the throughput, from replications with that step shorter and longer.
import { meanInterval, type Interval } from "#analysis/statistics/interval.ts";
import { CELL } from "#analysis/replication/measures.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";

/**
 * Percent of throughput for one percent of step time, pair by pair, by the difference of seconds a part. Seconds a part, not
 * their inverse, grow in proportion to a critical step. Null where no pair made any parts.
 *
 * Each rerun is paired with the same replication of the cell as it is. Near a balance a shorter step has less effect than a longer
 * one, so there are as many of each.
 */
export function oneSidedSlope(
  asItIs: readonly ReplicationAnswer[],
  reruns: readonly ReplicationAnswer[],
): Interval | null {
  const before = new Map(asItIs.map((answer) => [answer.task.replication, partsPerHour(answer)]));
  return intervalOf(
    reruns.map((rerun) => {
      const [base, scaled] = [before.get(rerun.task.replication) ?? 0, partsPerHour(rerun)];
      return base > 0 && scaled > 0 ? -(base / scaled - 1) / ((rerun.task.scale?.factor ?? 1) - 1) : null;
    }),
  );
}

/** The same by the central difference, where each replication was made with the step shorter and with it longer. */
export function centralSlope(
  shorter: readonly ReplicationAnswer[],
  longer: readonly ReplicationAnswer[],
): Interval | null {
  return intervalOf(
    shorter.map((answer, i) => {
      const [less, more] = [partsPerHour(answer), partsPerHour(longer[i])];
      const step = 1 - (answer.task.scale?.factor ?? 1);
      return less > 0 && more > 0 ? -(less - more) / (less + more) / step : null;
    }),
  );
}

function intervalOf(slopes: readonly (number | null)[]): Interval | null {
  const known = slopes.filter((slope) => slope !== null);
  return known.length === 0 ? null : meanInterval(known);
}

function partsPerHour(answer: ReplicationAnswer | undefined): number {
  const row = answer?.measures.find(({ resource, measure }) => resource === CELL && measure === "good parts per hour");
  return row?.value ?? 0;
}
