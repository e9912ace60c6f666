// How long a process's own steps take in one turn, at mean times.
import { lawMean } from "#engine/distributions/law.ts";
import { isWalk } from "#cell/words/takeawayWords.ts";
import type { ProcessSpec, TimeLaw } from "#engine/compiler/stepTable.ts";

/** Of a step with several laws the first counts; what comes only when something is given up does not. */
export function meanSeconds({ steps }: ProcessSpec): number {
  const given = steps.findIndex(({ name }) => name.startsWith("give up"));
  const turn = given === -1 ? steps : steps.slice(0, given);
  return turn.reduce((sum, { name, time }) => {
    const laws = time?.laws ?? [];
    // A way takes nothing from where one already is, and from everywhere else the same.
    const counted = isWalk(name) ? laws : laws.slice(0, 1);
    return sum + Math.max(0, ...counted.map(lawSeconds));
  }, 0);
}

function lawSeconds({ law, amount, factor = 1 }: TimeLaw): number {
  return (amount === undefined ? lawMean(law) : amount / 1e6 / lawMean(law)) * factor;
}
