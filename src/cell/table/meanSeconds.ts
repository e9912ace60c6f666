// How long a process's own steps take in one turn, at mean times.
import { lawMean } from "#engine/distributions/law.ts";
import type { CellProcess } from "#cell/words/cellTable.ts";
import type { TimeLaw } from "#engine/compiler/stepTable.ts";

/** Of a step with several laws the first counts; what follows only the loss of a shot does not count. */
export function meanSeconds({ steps }: CellProcess): number {
  const lost = steps.findIndex(({ role }) => role === "mold.loseDrop");
  const turn = lost === -1 ? steps : steps.slice(0, lost);
  return turn.reduce((sum, { role, time }) => {
    const laws = time?.laws ?? [];
    // A walk takes no time from the same place, and the same from all others.
    const counted = role === "crew.walk" ? laws : laws.slice(0, 1);
    return sum + Math.max(0, ...counted.map(lawSeconds));
  }, 0);
}

function lawSeconds({ law, amount, factor = 1 }: TimeLaw): number {
  return (amount === undefined ? lawMean(law) : amount / 1e6 / lawMean(law)) * factor;
}
