// Studies one point of a sweep and keeps what the tables and charts of the sweep need, as plain data.
import type { Issue } from "#foundation/issue.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { IdealCycle } from "#analysis/ideal/idealCycle.ts";
import { runStudy, type Study } from "./study.ts";

export interface PointMeasure {
  readonly resource: string;
  readonly measure: string;
  readonly unit: string;
  readonly mean: number;
  readonly halfWidth: number | null;
}

export interface FoundPoint {
  readonly kind: "found";
  readonly measures: readonly PointMeasure[];
  readonly replications: number;
  readonly ideal: {
    readonly method: IdealCycle["method"];
    readonly secondsPerShot: number;
    /** Null where the order of stations with different cavities is not known, and with a calendar: hours off shift count. */
    readonly partsPerHour: number | null;
  };
  /** False where the wanted precision was not reached. */
  readonly isDecided: boolean;
  readonly warnings: readonly Issue[];
}

export type PointOutcome = FoundPoint | { readonly kind: "refused"; readonly issues: readonly Issue[] };

/** Without reruns: a sweep shows the effect of a change by its own points. */
export function studyPoint(scenario: Scenario): PointOutcome {
  const outcome = runStudy(scenario, "off");
  if (outcome.kind === "stuck") return { kind: "refused", issues: [outcome.issue] };
  const { study } = outcome;
  return {
    kind: "found",
    measures: study.measures.map(({ resource, measure, unit, interval: { mean, halfWidth } }) => {
      return { resource, measure, unit, mean, halfWidth };
    }),
    replications: study.replications,
    ideal: {
      method: study.ideal.method,
      secondsPerShot: study.ideal.secondsPerShot,
      partsPerHour: idealPartsPerHour(study),
    },
    isDecided: study.precision?.reached !== false,
    warnings: study.warnings,
  };
}

const secondsPerHour = 3600;

function idealPartsPerHour({ scenario, ideal }: Study): number | null {
  if (scenario.calendar) return null;
  const cavities = new Map(scenario.stations.map(({ name, cavities: count }) => [name, count]));
  const counts = new Set(cavities.values());
  const [only] = counts;
  if (only !== undefined && counts.size === 1) return (only * secondsPerHour) / ideal.secondsPerShot;
  // Each shot cools once.
  const cooled = ideal.schedule.filter(({ role }) => role === "mold.cool");
  if (cooled.length !== ideal.shotsPerPeriod) return null;
  const parts = cooled.reduce((sum, { station }) => sum + (cavities.get(station) ?? 0), 0);
  return (parts / ideal.shotsPerPeriod / ideal.secondsPerShot) * secondsPerHour;
}
