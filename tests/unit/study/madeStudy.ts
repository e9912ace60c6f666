// Studies of which only the values of the cell are known.
import type { CostStudy } from "#analysis/indicators/costStudy.ts";
import { summarizeMeasures } from "#analysis/study/summarizeMeasures.ts";
import type { Study } from "#analysis/study/study.ts";
import type { CostSpec } from "#scenario/scenario.ts";
import { answerMade } from "../../support/madeAnswers.ts";
import { oneStation } from "../../support/madeOrder.ts";

/** By measure the values of the replications; null for a replication without one. */
export type Values = Readonly<Record<string, readonly (number | null)[]>>;

export function measuresMade(values: Values): Study["measures"] {
  const [first = []] = Object.values(values);
  return summarizeMeasures(
    first.map((_, i) => {
      const known = Object.entries(values).flatMap(([name, each]) => {
        const value = each[i] ?? null;
        return value === null ? [] : [[name, value] as const];
      });
      return answerMade(i + 1, Object.fromEntries(known));
    }),
  );
}

interface Costed {
  readonly costs?: CostSpec;
  readonly perHour?: readonly number[];
}

/** With rates, what an hour costs in each replication. */
export function studyMade(name: string, good: readonly number[], { costs, perHour = [] }: Costed = {}): Study {
  const total = perHour.map((cost, i) => (good[i]! > 0 ? (1000 * cost) / good[i]! : null));
  const known = costs && { currency: costs.currency, rows: [], perHourOf: perHour, perThousandOf: total };
  const study: Partial<Study> = {
    scenario: { ...oneStation, name, ...(costs ? { costs } : {}) },
    measures: measuresMade({ "good parts per hour": good }),
    costs: (known ?? null) as CostStudy | null,
  };
  return study as Study;
}
