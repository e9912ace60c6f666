// Parts of the ideal cycle in the planned time.
import { cellRunTime } from "#analysis/indicators/kpiRows.ts";
import { settledWarmup } from "#cell/run/settledWarmup.ts";
import { stateNames } from "#cell/words/stateNames.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { Base } from "./base.ts";

/** In the unit of the changes. */
export function idealParts({ scenario, ideal }: Base): number {
  return (plannedTime(scenario) / cellRunTime(scenario, ideal)) * perUnit(scenario);
}

const secondsPerHour = 3600;

/** Parts in planned seconds become parts of an observed hour, or with a calendar those of the run. */
function perUnit(scenario: Scenario): number {
  if (scenario.calendar !== undefined) return 1;
  return secondsPerHour / plannedTime(scenario);
}

/** Seconds of all work shifts with their breaks; without a calendar of the observed time. */
export function plannedTime({ calendar, run, ...rest }: Scenario): number {
  const from = settledWarmup({ run, ...rest });
  const off = (calendar?.off ?? []).filter(({ why }) => why === stateNames.offShift);
  const within = (seconds: number): number => Math.min(run.length, Math.max(from, seconds));
  return off.reduce((sum, absence) => sum - (within(absence.until) - within(absence.from)), run.length - from);
}
