// The process window of a study: hang, sag, time at heat and demold temperature of the shots against their limits, and all values in a table.
import type { Study } from "#analysis/study/study.ts";
import { outsideWindow } from "#analysis/window/stationWindow.ts";
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { figure } from "#report/charts/chart.ts";
import { limitBars, type LimitRow } from "#report/charts/limitBars.ts";
import { element, type Markup } from "#report/charts/markup.ts";
import { windowTables } from "#report/tables/studyTables.ts";
import { percent } from "#report/words/digits.ts";
import { shown } from "#report/words/shownValue.ts";
import type { Section } from "./htmlPage.ts";
import { numbers } from "./pictured.ts";
import type { Placing } from "./reported.ts";

/** None where no material is named. */
export function windowSections(study: Study, { id, of, units }: Placing): readonly Section[] {
  const outside = outsideWindow(study.windows).filter(({ isPractice }) => !isPractice).length;
  const some = outside === 1 ? "1 value is outside its limits." : `${outside} values are outside their limits.`;
  const found = outside === 0 ? "All computed values are inside their limits." : some;
  return windowTables([study]).map((table) => ({
    id: `${id}-window`,
    heading: `Process window${of}`,
    body: [
      element(
        "p",
        {},
        `Limits of wall, resin and machine at mean step times. ${found} Computed times are never safe limits.`,
      ),
      spreadFigure(study, numbers(table, study, { id, units }), { id, of, units }),
    ],
  }));
}

function spreadFigure({ spreads }: Study, table: Markup, { id, of, units }: Placing): Markup {
  const rows = limitRows(spreads, units);
  if (rows.length === 0) return table;
  const heading = `Hang, sag, time at heat and demold temperature of the shots${of}`;
  const words = { id: `${id}-window-chart`, title: heading, description: heading };
  const caption = [
    "The bar holds 90 % of the shots, the dot is their median, the tick the largest shot; without a tick it lies beyond the axis. The heavy line is the limit; the area beyond it is tinted.",
  ];
  return figure(heading, { picture: limitBars(rows, words), caption, table });
}

type Spread = Study["spreads"][number];

/** Of each quantity the stations whose shots come closest to the limit; the table has all. */
const mostStations = 4;

export function limitRows(spreads: readonly Spread[], units: UnitSystem): readonly LimitRow[] {
  return [...new Set(spreads.map(({ quantity }) => quantity))].flatMap((quantity) =>
    spreads
      .filter((spread) => spread.quantity === quantity)
      .toSorted((one, other) => other.quantiles.p95 - one.quantiles.p95)
      .slice(0, mostStations)
      .map((spread) => limitRow(spread, units)),
  );
}

function limitRow({ quantity, station, unit, quantiles, max, limit, beyond }: Spread, units: UnitSystem): LimitRow {
  const { p05, p50, p95 } = quantiles;
  const say = (value: number): string => shown(value, unit, units);
  const limited = limit === null ? "no limit" : `limit ${say(limit)}`;
  const above = beyond > 0 ? `, above it in ${beyond < 0.001 ? "less than 0.1 %" : percent(beyond)} of the shots` : "";
  const remark = `median ${say(p50)}, largest ${say(max)}; ${limited}${above}`;
  return { quantity, name: `${quantity}, ${station}`, remark, p05, median: p50, p95, largest: max, limit };
}
