// Counts what the tests noticed of a sample of mutants, with the interval that the size of the sample leaves.

/** Standard normal quantile of 97.5 %. */
const z = 1.959964;

/** The 95 % interval of a share. Source: Wilson, Journal of the American Statistical Association 22 (1927) 209 [M]. */
function wilson(part, all) {
  const center = (part + (z * z) / 2) / (all + z * z);
  const half = (z / (all + z * z)) * Math.sqrt((part * (all - part)) / all + (z * z) / 4);
  return [center - half, center + half];
}

const percent = (share) => (100 * share).toFixed(0);

/** Mutants that are no program do not count; those that no test reaches count as survivors. */
export function scoreLine(room, states) {
  const valid = states.filter((state) => state !== "invalid").length;
  const killed = states.filter((state) => state === "killed").length;
  const [low, high] = wilson(killed, valid);
  return `${room}: ${killed} of ${valid} killed, ${percent(killed / valid)} % (${percent(low)} to ${percent(high)} %)`;
}
