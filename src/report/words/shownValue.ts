// A value of the process window as a practitioner would say it.
import type { Dimension } from "#foundation/dimension.ts";
import { formatQuantity, type UnitSystem } from "#foundation/formatQuantity.ts";

/** Formulas and material data are good for three digits at best. */
const digits = 3;

/** Units in which a practitioner would say it; tables keep SI. */
const dimensionOf: Readonly<Record<string, Dimension>> = {
  s: "time",
  m: "length",
  "m³": "volume",
  kg: "mass",
  "kg/s": "rate",
  Pa: "pressure",
  MPa: "pressure",
  N: "force",
  W: "power",
  "J/kg": "specificEnergy",
  "m²/s": "diffusivity",
  "m³/s": "volumeFlow",
  "1": "share",
};

/** The zero of the Celsius scale in kelvin. */
const celsiusZero = 273.15;

/** To three digits, in the unit in which a practitioner would say it. */
export function shown(value: number, unit: string, system: UnitSystem): string {
  // A time that has no end, a length that has drawn to nothing.
  if (!Number.isFinite(value)) return "without end";
  if (unit === "MPa" && system === "si") return `${Number((value / 1e6).toPrecision(digits))} MPa`;
  const dimension = dimensionOf[unit];
  if (unit === "°C") return formatQuantity(value + celsiusZero, "temperature", { system, digits });
  return dimension
    ? formatQuantity(value, dimension, { system, digits })
    : `${Number(value.toPrecision(digits))} ${unit}`;
}
