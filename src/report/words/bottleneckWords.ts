// Phrases for what sets the pace of a cell and for the next resource in line.
import { PLASTICATOR } from "#cell/words/cycleNames.ts";
import type { Study } from "#analysis/study/study.ts";
import { seconds, withInterval } from "./digits.ts";
import { matchedSlackWords } from "./extrusionWords.ts";
import { ownerName, stepOf } from "./tradeWords.ts";

/** "cooling, left and right: 63 ± 1 % of the critical path". */
export function bottleneckWords({ leading }: Pick<Study, "leading">): string {
  const first = paceSetter({ leading });
  if (!first) return "no shot was made";
  return `${bottleneckName(first)}: ${withInterval(first.share, 100)} % of the critical path`;
}

/** The step that sets the pace; undefined where no shot was made. */
export function paceSetter({ leading }: Pick<Study, "leading">): Study["leading"][number] | undefined {
  return leading.find(({ share }, i) => i === 0 && share.mean > 0);
}

/** "cooling, left and right". */
export function bottleneckName(leading: Omit<Study["leading"][number], "share">): string {
  return stepOf(leading, leading.resources);
}

/** A matched screw is half a tick faster than its molds. */
const leastSlack = 1e-5;

/** "the screw, slack 0.94 s a shot". */
export function runnerUpWords({ runnerUp, scenario, ideal }: Pick<Study, "runnerUp" | "scenario" | "ideal">): string {
  if (!runnerUp) return "no other resource";
  const { name, slackPerShot } = runnerUp;
  const matched = name === PLASTICATOR ? matchedSlackWords(scenario, ideal) : undefined;
  if (matched !== undefined) return `${ownerName(name)}, ${matched}`;
  if (slackPerShot < leastSlack) return `${ownerName(name)}, no slack`;
  return `${ownerName(name)}, slack ${seconds(slackPerShot)} a shot`;
}
