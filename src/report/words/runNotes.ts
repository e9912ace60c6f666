// Notes beside the intervals of a run: stops that occur too seldom, and a long warm-up.
import type { RareStops } from "#analysis/study/rareStops.ts";
import type { Study } from "#analysis/study/study.ts";
import { grouped, percent } from "./digits.ts";

/** One line for each note. */
export function runNotes(study: Study): readonly string[] {
  return [...rareStopWords(study), ...warmUpWords(study)];
}

/** Of a comparison: once where all scenarios have the same notes, else for each scenario. */
export function comparedNotes(studies: readonly Study[]): readonly string[] {
  const notes = studies.map(runNotes);
  const [first = []] = notes;
  if (notes.every((each) => each.join("\n") === first.join("\n"))) return first;
  return studies.flatMap(({ scenario }, i) => notes[i]!.map((note) => `${scenario.name}: ${note}`));
}

/** "Few stops in 10 replications: heater band 1. ± and means use their known rate (control variates). A length of 159 h holds enough." */
function rareStopWords(study: Study): readonly string[] {
  const { rareStops, replications } = study;
  if (!rareStops) return [];
  const { stops, length } = rareStops;
  const runs = replications === 1 ? "1 replication" : `${replications} replications`;
  const seen = stops.map((stop) => `${stop.name} ${stop.seen}`).join(", ");
  const enough = length === null ? "" : ` A length of ${grouped(length / secondsPerHour)} h holds enough.`;
  return [`Few stops in ${runs}: ${seen}. ${effectWords(rareStops, study)}${enough}`];
}

function effectWords({ isControlled, isSeen }: RareStops, { replications, changes }: Study): string {
  const seenOnly = changes === undefined ? "" : "; gains are those of the stops that occurred";
  if (isControlled) return `± and means use their known rate (control variates)${seenOnly}.`;
  if (replications === 1) return "The result depends on when they occur.";
  return isSeen ? "Replications differ by how many they hold." : "± may be too narrow.";
}

const secondsPerHour = 3600;

/** A longer warm-up takes a notable part of the computed time. */
const mostOfRun = 0.1;

function warmUpWords({ scenario }: Study): readonly string[] {
  const { warmup, length } = scenario.run;
  const share = warmup === "auto" ? 0 : warmup / length;
  return share > mostOfRun ? [`The warm-up takes ${percent(share)} of the run; make \`run.length\` longer.`] : [];
}
