// The units in which the values of a measure or a table are shown; files keep those in which they were computed.
import type { Dimension } from "#foundation/dimension.ts";
import { displayUnit, fromSi, type UnitSystem } from "#foundation/formatQuantity.ts";
import { inSi } from "#foundation/quantity.ts";
import { unitSpelled } from "#foundation/unit.ts";
import type { MeasureSummary } from "#analysis/study/summarizeMeasures.ts";
import { withInterval } from "./digits.ts";

/** What has other units in the other system; times, shares and counts have the same. */
const dimensions: readonly Dimension[] = [
  "rate",
  "mass",
  "length",
  "volume",
  "pressure",
  "force",
  "power",
  "specificEnergy",
  "temperature",
];

export interface ShownUnit {
  readonly symbol: string;
  readonly value: (value: number) => number;
  /** Of a difference, such as the half width of an interval: no zero of a scale counts. */
  readonly difference: (value: number) => number;
}

/** A rate of parts as it is spoken: files have `1/h`. */
export function spokenUnit(symbol: string): string {
  return symbol === "1/h" ? "per hour" : symbol;
}

/** `size` is a value of those to be shown: small ones are shown in small units. */
export function shownUnit(symbol: string, size: number, system: UnitSystem): ShownUnit {
  const same = (value: number): number => value;
  const units = dimensions.flatMap((dimension) => unitSpelled(symbol, dimension) ?? []);
  const [own] = units;
  if (system === "si" || own === undefined) return { symbol: spokenUnit(symbol), value: same, difference: same };
  const shown = displayUnit(inSi(size, own), own.dimension, system);
  const factor = (own.numerator * shown.denominator) / (own.denominator * shown.numerator);
  return {
    symbol: shown.symbol,
    value: (value) => fromSi(inSi(value, own), shown),
    difference: (value) => value * factor,
  };
}

/** "142.4 ± 0.3 lb/h". */
export function measureWords(
  { interval, unit }: Pick<MeasureSummary, "interval" | "unit">,
  system: UnitSystem,
): string {
  const { symbol, difference } = shownUnit(unit, interval.mean, system);
  return `${withInterval(interval, difference(1))} ${symbol}`;
}
