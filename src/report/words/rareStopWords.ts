// Names the stops that occur too seldom in a run, says what ± does about it, and how long a run holds enough of them.
import type { RareStops } from "#analysis/study/rareStops.ts";
import type { Study } from "#analysis/study/study.ts";
import { formatQuantity } from "#foundation/formatQuantity.ts";

/** None where every stop occurs often enough. */
export function rareStopWords({
  rareStops,
  replications,
}: Pick<Study, "rareStops" | "replications">): readonly string[] {
  if (!rareStops) return [];
  const { stops, length } = rareStops;
  const runs = replications === 1 ? "1 replication" : `${replications} replications`;
  const seen = stops.map((stop) => `${stop.name} ${stop.seen}`).join(", ");
  const enough = length === null ? "" : ` A length of ${formatQuantity(length, "time", { digits: 4 })} holds enough.`;
  return [`Few stops in ${runs}: ${seen}. ${effectWords(rareStops, replications)}${enough}`];
}

function effectWords({ isControlled }: RareStops, replications: number): string {
  if (isControlled) return "± and means use their known rate (control variates).";
  return replications === 1 ? "The result depends on chance." : "± may be too narrow.";
}

/** Of a comparison: one line where all scenarios have the same, else one for each. */
export function comparedRareStops(studies: readonly Study[]): readonly string[] {
  const lines = studies.map((study) => rareStopWords(study));
  const [first = []] = lines;
  if (lines.every((each) => each.join("") === first.join(""))) return first;
  return studies.flatMap(({ scenario }, i) => lines[i]!.map((line) => `${scenario.name}: ${line}`));
}
