// The finish times of an order over its runs as a histogram, with the due date and the times by which shares of the runs are done.
import type { OrderStudy } from "#analysis/promise/orderStudy.ts";
import { chart, chartWidth, line, widthOfWords, words, type ChartWords } from "#report/charts/chart.ts";
import { element, type Child, type Markup } from "#report/charts/markup.ts";
import { momentWords } from "#report/words/momentWords.ts";
import { finishBins, type FinishBin } from "./finishBins.ts";
import { straightScale } from "#report/charts/straightScale.ts";

const left = 60;
/** The words of a mark stand to the right of its line, also of the last. */
const right = chartWidth - 290;
const rowHeight = 17;
const barsHeight = 200;
const mostTicks = 8;

type Drawn = Pick<OrderStudy, "finish" | "order" | "scenario" | "times">;

interface Mark {
  readonly label: string;
  readonly at: number;
  readonly style: string;
}

/** Marks stand in rows above the bars, the earliest highest, so that no line goes through words. */
export function finishChart(study: Drawn, given: ChartWords): Markup {
  const bins = finishBins(study.finish, study.order.due);
  const marks = marksOf(study);
  const top = 12 + marks.length * rowHeight;
  const bottom = top + barsHeight;
  const ends = [...bins.flatMap(({ from, until }) => [from, until]), ...marks.map(({ at }) => at)];
  const x = straightScale([Math.min(...ends), Math.max(...ends)], [left, right]);
  const y = straightScale([0, Math.max(1, ...bins.map(({ runs }) => runs))], [bottom, top]);
  return chart(
    given,
    bottom + 42,
    ...y
      .ticks(4)
      .filter(Number.isInteger)
      .flatMap((tick) => [
        line(left, y(tick), right, y(tick), "grid"),
        words(String(tick), left - 8, y(tick) + 4, { anchor: "end", style: "quiet" }),
      ]),
    ...bins.map((bin) => bar(bin, x, y)),
    ...axis(bins, x, bottom, study),
    ...marks.flatMap((mark, row) => markMarkup(mark, x(mark.at), 12 + row * rowHeight, bottom)),
  );
}

/** In the order of time. */
function marksOf({ times, order, scenario }: Drawn): readonly Mark[] {
  const shown = times.filter(({ share }) => share >= 0.5);
  const marks = [
    ...shown.map(({ share, seconds }) => ({
      label: `${Math.round(share * 100)} % of runs by ${momentWords(seconds, scenario)}`,
      at: seconds,
      style: "mark",
    })),
    ...(order.due === null
      ? []
      : [{ label: `due ${momentWords(order.due, scenario)}`, at: order.due, style: "moment" }]),
  ];
  return marks.toSorted((one, other) => one.at - other.at);
}

type Scale = (value: number) => number;

function bar({ from, until, runs, isOnTime }: FinishBin, x: Scale, y: Scale): Child {
  if (runs === 0) return "";
  const box = { x: x(from) + 0.5, width: Math.max(1, x(until) - x(from) - 1), y: y(runs), height: y(0) - y(runs) };
  const title = `${runs} runs, ${isOnTime ? "on time" : "late"}`;
  return element("rect", { ...box, class: isOnTime ? "good" : "poor" }, element("title", {}, title));
}

function axis(bins: readonly FinishBin[], x: Scale, bottom: number, { scenario }: Drawn): readonly Child[] {
  const every = Math.max(1, Math.ceil(bins.length / mostTicks));
  const ticks = bins.filter((_, i) => i % every === 0);
  let free = -Infinity;
  const labels = ticks.flatMap(({ from }) => {
    const content = momentWords(from, scenario)
      .replace(/ after the start$/u, "")
      .replace(/^(\w+) \d{4}-/u, "$1 ");
    const half = widthOfWords(content) / 2;
    if (x(from) - half < free) return [];
    free = x(from) + half + 8;
    return [words(content, x(from), bottom + 18, { anchor: "middle", style: "quiet" })];
  });
  return [
    line(left, bottom, right, bottom, "base"),
    ...labels,
    words("runs that finish", left, bottom + 36, { style: "quiet" }),
  ];
}

function markMarkup({ label, style }: Mark, at: number, row: number, bottom: number): readonly Child[] {
  return [line(at, row - 6, at, bottom, style), words(label, at + 6, row + 4, { style: "name" })];
}
