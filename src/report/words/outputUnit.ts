// In what a comparison shows good parts: an hour, or with a calendar the whole run.
import { formatQuantity } from "#foundation/formatQuantity.ts";
import type { Study } from "#analysis/study/study.ts";

export interface OutputUnit {
  /** From good parts an hour. */
  readonly factor: number;
  /** "good parts an hour", "good parts in 7 d". */
  readonly words: string;
}

const anHour: OutputUnit = { factor: 1, words: "good parts an hour" };

const secondsPerHour = 3600;

/** All layouts of a comparison run over the same time. */
export function outputUnit(studies: readonly Pick<Study, "scenario">[]): OutputUnit {
  const run = studies[0]?.scenario.run;
  if (!run || studies.every(({ scenario }) => !scenario.calendar)) return anHour;
  const observed = run.length - (run.warmup === "auto" ? 0 : run.warmup);
  return {
    factor: observed / secondsPerHour,
    words: `good parts in ${formatQuantity(observed, "time", { digits: 3 })}`,
  };
}
