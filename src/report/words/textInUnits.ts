// Quantities in a text of a scenario, such as `gamma 8 s, 1 s`, in the units of one system.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { grouped } from "./digits.ts";
import { shownUnit } from "./shownUnits.ts";

const quantity = /([+−]?)(\d+(?:\.\d+)?) ([^\s,;:]+)/gu;
const digits = 4;

/** A quantity with a sign is a difference. In SI the units stay as they are written, and so do those that both systems share. */
export function textInUnits(text: string, units: UnitSystem): string {
  if (units === "si") return text;
  return text.replaceAll(quantity, (written, sign: string, number: string, symbol: string) => {
    const size = Number(number);
    const shown = shownUnit(symbol, size, units);
    if (shown.symbol === symbol) return written;
    const value = sign === "" ? shown.value(size) : shown.difference(size);
    return `${sign}${grouped(Number(value.toPrecision(digits)))} ${shown.symbol}`;
  });
}
