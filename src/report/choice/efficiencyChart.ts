// Output against cost, a point a layout, with a line through those that make the most for their cost.
import { chart, chartWidth, fittedWords, line, widthOfWords, words, type ChartWords } from "#report/charts/chart.ts";
import { element, type Child, type Markup } from "#report/charts/markup.ts";
import { grouped } from "#report/words/digits.ts";
import { straightScale } from "#report/charts/straightScale.ts";

export interface CostPoint {
  readonly name: string;
  readonly cost: number;
  readonly output: number;
  readonly halfWidth: number;
  /** No layout makes as many parts for less. */
  readonly isEfficient: boolean;
  readonly isBest: boolean;
}

export interface Axes {
  /** Below the picture, and above it. */
  readonly cost: string;
  readonly output: string;
}

const left = 70;
const right = chartWidth - 30;
const top = 34;
const bottom = 330;

export function efficiencyChart(points: readonly CostPoint[], axes: Axes, given: ChartWords): Markup {
  const outputs = points.flatMap(({ output, halfWidth }) => [output - halfWidth, output + halfWidth]);
  const x = straightScale(
    widened(
      points.map(({ cost }) => cost),
      0.08,
    ),
    [left, right],
  );
  const y = straightScale(widened(outputs, 0.1), [bottom, top]);
  const efficient = points.filter(({ isEfficient }) => isEfficient).toSorted((one, other) => one.cost - other.cost);
  return chart(
    given,
    bottom + 44,
    words(axes.output, 0, top - 18, { style: "quiet" }),
    ...y
      .ticks(6)
      .flatMap((tick) => [
        line(left, y(tick), right, y(tick), "grid"),
        words(grouped(tick), left - 8, y(tick) + 4, { anchor: "end", style: "quiet" }),
      ]),
    ...x.ticks(6).map((tick) => words(grouped(tick), x(tick), bottom + 18, { anchor: "middle", style: "quiet" })),
    words(axes.cost, left, bottom + 36, { style: "quiet" }),
    ...efficient
      .slice(1)
      .map((point, i) => line(x(efficient[i]!.cost), y(efficient[i]!.output), x(point.cost), y(point.output), "mean")),
    ...points.flatMap((point) => pointMarkup(point, x(point.cost), y)),
    ...nameMarkup(points.map((point) => ({ point, x: x(point.cost), y: y(point.output) }))),
  );
}

/** Equal values still need an axis. */
function widened(values: readonly number[], share: number): readonly [number, number] {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const margin = (high - low) * share || Math.abs(high) * 0.01 || 1;
  return [low - margin, high + margin];
}

function pointMarkup(point: CostPoint, x: number, y: (value: number) => number): readonly Child[] {
  const { name, output, halfWidth, isEfficient, isBest } = point;
  const remark = `${name}: ${grouped(Number(output.toPrecision(5)))}`;
  return [
    ...(halfWidth > 0 ? [line(x, y(output - halfWidth), x, y(output + halfWidth), "whisker")] : []),
    element(
      "circle",
      { cx: x, cy: y(output), r: isBest ? 8 : isEfficient ? 6 : 4, class: isEfficient ? "good" : "dot" },
      element("title", {}, remark),
    ),
    ...(isBest ? [element("circle", { cx: x, cy: y(output), r: 11, class: "ring" })] : []),
  ];
}

interface Placed {
  readonly point: CostPoint;
  readonly x: number;
  readonly y: number;
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const nameWidth = 300;
const nameHeight = 15;
const away = 15;

/** The chosen and the efficient layouts first; a name that fits nowhere is left out, and the point has it as its title. */
function nameMarkup(placed: readonly Placed[]): readonly Child[] {
  const rank = ({ point }: Placed): number => (point.isBest ? 0 : point.isEfficient ? 1 : 2);
  const taken: Box[] = placed.map(({ x, y }) => ({ left: x - 8, right: x + 8, top: y - 8, bottom: y + 8 }));
  return placed
    .toSorted((one, other) => rank(one) - rank(other))
    .flatMap(({ point, x, y }) => {
      const text = fittedWords(point.isBest ? `${point.name} (best)` : point.name, nameWidth);
      const box = boxesAround(x, y, widthOfWords(text)).find((each) => isFree(each, taken));
      if (!box) return [];
      taken.push(box);
      return [words(text, box.left, box.bottom - 4, { style: point.isEfficient ? "name" : "quiet" })];
    });
}

/** To the right, to the left, above and below, there also from the point on. */
function boxesAround(x: number, y: number, width: number): readonly Box[] {
  const boxAt = (from: number, middle: number): Box => {
    return { left: from, right: from + width, top: middle - nameHeight / 2, bottom: middle + nameHeight / 2 };
  };
  return [
    boxAt(x + away, y),
    boxAt(x - away - width, y),
    boxAt(x - width / 2, y - away - 4),
    boxAt(x - width / 2, y + away + 4),
    boxAt(x, y - away - 4),
    boxAt(x, y + away + 4),
  ];
}

function isFree(box: Box, taken: readonly Box[]): boolean {
  const isInside = box.left >= left && box.right <= chartWidth && box.top >= top - 10 && box.bottom <= bottom;
  return (
    isInside &&
    taken.every(
      (other) => box.right < other.left || other.right < box.left || box.bottom < other.top || other.bottom < box.top,
    )
  );
}
