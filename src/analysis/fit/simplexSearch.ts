// Finds the least value of a function of a few variables without derivatives.

/** Source: Nelder and Mead, The Computer Journal 7 (1965) 308, with the usual coefficients [M]. */
export function simplexSearch(
  cost: (point: readonly number[]) => number,
  start: readonly number[],
  step: number,
  steps = 200,
): readonly number[] {
  const corner = (point: readonly number[]): Corner => ({ point, cost: cost(point) });
  const corners = [start, ...start.map((_, i) => start.map((value, j) => (i === j ? value + step : value)))]
    .map(corner)
    .toSorted((one, other) => one.cost - other.cost);
  for (let i = 0; i < steps; i++) {
    const best = corners[0]!;
    const worst = corners.pop()!;
    if (Math.abs(worst.cost - best.cost) <= 1e-9 * (1 + Math.abs(best.cost))) break;
    const center = centerOf(corners);
    const moved = (by: number): Corner => corner(center.map((value, j) => value + by * (value - worst.point[j]!)));
    const reflected = moved(1);
    const next =
      reflected.cost < best.cost
        ? lower(moved(2), reflected)
        : reflected.cost < corners.at(-1)!.cost
          ? reflected
          : lower(moved(0.5), moved(-0.5));
    if (next.cost < worst.cost) insert(corners, next);
    else {
      const shrunk = [...corners, worst].map(({ point }) => point.map((value, j) => (value + best.point[j]!) / 2));
      corners.length = 0;
      for (const point of shrunk) insert(corners, corner(point));
    }
  }
  return corners[0]!.point;
}

interface Corner {
  readonly point: readonly number[];
  readonly cost: number;
}

function centerOf(corners: readonly Corner[]): readonly number[] {
  return corners[0]!.point.map((_, j) => {
    let sum = 0;
    for (const { point } of corners) sum += point[j]!;
    return sum / corners.length;
  });
}

/** Behind those that cost as much. */
function insert(corners: Corner[], corner: Corner): void {
  let place = corners.length;
  while (place > 0 && corner.cost < corners[place - 1]!.cost) place -= 1;
  corners.splice(place, 0, corner);
}

const lower = (one: Corner, other: Corner): Corner => (other.cost < one.cost ? other : one);
