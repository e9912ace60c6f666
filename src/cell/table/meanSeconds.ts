// How long a process's own steps take in one turn, at mean times.
import { distributionMean } from "#engine/distributions/moments.ts";
import type { CellProcess } from "#cell/words/cellTable.ts";
import type { DrawnTime } from "#engine/compiler/stepTable.ts";

/** Of a step with several distributions the first counts; what follows only the loss of a shot does not count. */
export function meanSeconds({ steps }: CellProcess): number {
  const lost = steps.findIndex(({ role }) => role === "mold.loseDrop");
  const turn = lost === -1 ? steps : steps.slice(0, lost);
  return turn.reduce((sum, { role, time }) => {
    const distributions = time?.distributions ?? [];
    // A walk takes no time from the same place, and the same from all others.
    const counted = role === "crew.walk" ? distributions : distributions.slice(0, 1);
    return sum + Math.max(0, ...counted.map(distributionSeconds));
  }, 0);
}

function distributionSeconds({ distribution, amount, factor = 1 }: DrawnTime): number {
  return (
    (amount === undefined ? distributionMean(distribution) : amount / 1e6 / distributionMean(distribution)) * factor
  );
}
