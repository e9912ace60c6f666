// Quantities of the shots against their limits: 90 % of the shots as a bar, the median, the largest shot and the limit.
import { barList, place, trackHeight, upright, type ListRow } from "./barList.ts";
import { line, type ChartWords } from "./chart.ts";
import { element, type Child, type Markup } from "./markup.ts";
import { stretchedBox } from "./patterns.ts";

export interface LimitRow {
  /** Rows of one quantity have one scale, which begins at 0. */
  readonly quantity: string;
  readonly name: string;
  readonly remark: string;
  readonly p05: number;
  readonly median: number;
  readonly p95: number;
  readonly largest: number;
  /** Null where no limit is given. */
  readonly limit: number | null;
}

/** The scale ends behind the limit and behind 95 % of the shots; a shot after a night would make all others one dot. */
const afterLimit = 1.2;
const afterMost = 1.5;

export function limitBars(rows: readonly LimitRow[], given: ChartWords): Markup {
  const scales = new Map<string, number>();
  for (const { quantity, p95, limit } of rows)
    scales.set(quantity, Math.max(scales.get(quantity) ?? 0, p95 * afterMost, (limit ?? 0) * afterLimit));
  const label = "from 0; bar: 90 % of the shots";
  return barList(
    rows.map((row) => rowOf(row, scales.get(row.quantity) || 1, given.id)),
    { label, track: [] },
    given,
  );
}

function rowOf(row: LimitRow, most: number, id: string): ListRow {
  const { name, remark, p05, median, p95, largest, limit } = row;
  const at = (value: number): number => Math.min(1, value / most);
  const isBeyond = limit !== null && largest > limit;
  const middle = trackHeight / 2;
  const track: Child[] = [
    element("title", {}, `${name}: ${remark}`),
    line(place(0), middle, place(at(largest)), middle, "whisker"),
    ...(limit === null
      ? []
      : [element("rect", { x: place(at(limit)), width: place(1 - at(limit)), height: trackHeight, class: "beyond" })]),
    ...stretchedBox(id, isBeyond ? "poor" : "good", {
      from: at(p05),
      to: Math.max(at(p95), at(p05) + 0.004),
      height: trackHeight,
    }),
    element("circle", { cx: place(at(median)), cy: middle, r: 4, class: "dot" }),
    ...(largest > most ? [] : [line(place(at(largest)), 3, place(at(largest)), trackHeight - 3, "whisker")]),
    ...(limit === null ? [] : [upright(at(limit), "limit")]),
  ];
  return { name, remark, isPart: false, track };
}
