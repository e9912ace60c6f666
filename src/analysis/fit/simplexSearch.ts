// Finds the least value of a function of a few variables without derivatives.

/** Source: Nelder and Mead, The Computer Journal 7 (1965) 308, with the usual coefficients [M]. */
export function simplexSearch(
  cost: (point: readonly number[]) => number,
  start: readonly number[],
  step: number,
  steps = 200,
): readonly number[] {
  const corner = (point: readonly number[]) => ({ point, cost: cost(point) });
  let corners = [start, ...start.map((_, i) => start.map((value, j) => (i === j ? value + step : value)))].map(corner);
  for (let i = 0; i < steps; i++) {
    corners = corners.toSorted((one, other) => one.cost - other.cost);
    const [best, worst] = [corners[0]!, corners.at(-1)!];
    if (Math.abs(worst.cost - best.cost) <= 1e-9 * (1 + Math.abs(best.cost))) break;
    const others = corners.slice(0, -1);
    const center = start.map((_, j) => others.reduce((sum, { point }) => sum + point[j]!, 0) / others.length);
    const moved = (by: number) => corner(center.map((value, j) => value + by * (value - worst.point[j]!)));
    const reflected = moved(1);
    const next =
      reflected.cost < best.cost
        ? lower(moved(2), reflected)
        : reflected.cost < others.at(-1)!.cost
          ? reflected
          : lower(moved(0.5), moved(-0.5));
    corners =
      next.cost < worst.cost
        ? [...others, next]
        : corners.map(({ point }) => corner(point.map((value, j) => (value + best.point[j]!) / 2)));
  }
  return corners.reduce((one, other) => lower(one, other)).point;
}

function lower<Corner extends { readonly cost: number }>(one: Corner, other: Corner): Corner {
  return other.cost < one.cost ? other : one;
}
