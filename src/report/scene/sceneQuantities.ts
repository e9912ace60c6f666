// Masses and temperatures as the picture of a cell says them, in the units of one system.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { grouped } from "#report/words/digits.ts";
import { shownUnit } from "#report/words/shownUnits.ts";

/** Below this a number has one decimal more. */
const few = { si: 20, us: 10 } as const;

/** "63 of 109 g", "2.22 of 3.84 oz". */
export function massOf(grams: number, whole: number, units: UnitSystem): string {
  const { number, symbol } = massIn(whole, units);
  return `${number(grams)} of ${number(whole)} ${symbol}`;
}

/** Whole grams; tenths below 20 g. */
export function mass(grams: number, units: UnitSystem): string {
  const { number, symbol } = massIn(grams, units);
  return `${number(grams)} ${symbol}`;
}

function massIn(
  size: number,
  units: UnitSystem,
): { readonly number: (grams: number) => string; readonly symbol: string } {
  const { symbol, value } = shownUnit("g", size, units);
  // Ounces and pounds are larger than grams.
  const more = units === "us" ? 1 : 0;
  const number = (grams: number): string => {
    const shown = value(grams);
    return grouped(shown.toFixed((shown < few[units] ? 1 : 0) + more));
  };
  return { number, symbol };
}

/** "124 °C", "255 °F". */
export function temperature(celsius: number, units: UnitSystem): string {
  const { symbol, value } = shownUnit("°C", celsius, units);
  return `${value(celsius).toFixed(0)} ${symbol}`;
}
