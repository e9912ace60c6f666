// An operator as a plain figure with a name.
import { fittedWords, words } from "#report/charts/chart.ts";
import { element, type Child, type Markup } from "#report/charts/markup.ts";
import type { Place } from "./statePlate.ts";

/** At the mold; several share one line, and no operator leaves it empty. */
export function operatorFigure(names: readonly string[], { x, y, width }: Place): readonly Child[] {
  if (names.length === 0) return [];
  return [figure(x + 7, y), words(fittedWords(names.join(", "), width - 17), x + 17, y + 12)];
}

/** A head and shoulders, 14 high; the top is at y. */
export function figure(x: number, y: number, style = "figure"): Markup {
  return element("path", {
    d: `M${x - 3.5} ${y + 4}a3.5 3.5 0 1 0 7 0a3.5 3.5 0 1 0 -7 0ZM${x - 7} ${y + 15}a7 6.5 0 0 1 14 0Z`,
    class: style,
  });
}
