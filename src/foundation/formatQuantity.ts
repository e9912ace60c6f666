// An SI value written as people read it, in metric or US customary units.
import type { Dimension } from "./dimension.ts";
import { invariant } from "./invariant.ts";
import { inSi } from "./quantity.ts";
import { unitSpelled, type Unit } from "./unit.ts";

export type UnitSystem = "si" | "us";

/** Display units, each with the smallest SI magnitude for which it is used. */
type Scale = readonly (readonly [from: number, symbol: string])[];

const scales: Readonly<Partial<Record<Dimension, { readonly si: Scale; readonly us: Scale }>>> = {
  time: both([
    [0, "s"],
    [180, "min"],
    [10_800, "h"],
    [432_000, "d"],
  ]),
  mass: {
    si: [
      [0, "g"],
      [1, "kg"],
      [10_000, "t"],
    ],
    us: [
      [0, "oz"],
      [0.45359237, "lb"],
    ],
  },
  rate: { si: [[0, "kg/h"]], us: [[0, "lb/h"]] },
  length: {
    si: [
      [0, "mm"],
      [1, "m"],
    ],
    us: [
      [0, "in"],
      [0.9144, "ft"],
    ],
  },
  area: {
    si: [
      [0, "cm²"],
      [1, "m²"],
    ],
    us: [[0, "in²"]],
  },
  volume: {
    si: [
      [0, "mL"],
      [0.001, "L"],
      [10, "m³"],
    ],
    us: [
      [0, "fl oz"],
      [0.003785411784, "gal"],
    ],
  },
  pressure: { si: [[0, "bar"]], us: [[0, "psi"]] },
  force: {
    si: [
      [0, "N"],
      [1000, "kN"],
    ],
    us: [
      [0, "lbf"],
      [17_792.9, "tonf"],
    ],
  },
  temperature: { si: [[0, "°C"]], us: [[0, "°F"]] },
  temperatureDifference: { si: [[0, "K"]], us: [[0, "°F"]] },
  share: both([[0, "%"]]),
  density: { si: [[0, "kg/m³"]], us: [[0, "lb/ft³"]] },
  conductivity: both([[0, "W/(m K)"]]),
  diffusivity: both([[0, "mm²/s"]]),
  specificHeat: { si: [[0, "kJ/(kg K)"]], us: [[0, "BTU/(lb °F)"]] },
  specificEnergy: { si: [[0, "kJ/kg"]], us: [[0, "BTU/lb"]] },
  heatTransfer: both([[0, "W/(m² K)"]]),
  molarEnergy: both([[0, "kJ/mol"]]),
  thermalResistance: both([[0, "K/kW"]]),
  volumeFlow: { si: [[0, "L/min"]], us: [[0, "gal/min"]] },
  viscosity: both([[0, "Pa s"]]),
  lineLoad: { si: [[0, "N/mm"]], us: [[0, "lbf/in"]] },
  power: { si: [[0, "kW"]], us: [[0, "hp"]] },
  speed: both([[0, "rpm"]]),
  angle: both([[0, "deg"]]),
  conductance: both([[0, "dm³/(s bar)"]]),
  cycles: both([[0, "cycles"]]),
  costPerMass: { si: [[0, "per kg"]], us: [[0, "per lb"]] },
  costPerTime: both([[0, "per h"]]),
  countPerTime: both([[0, "per h"]]),
  costPerEnergy: both([[0, "per kWh"]]),
  costPerVolume: both([[0, "per m³"]]),
  costPerPart: both([[0, "per part"]]),
  parts: both([[0, "parts"]]),
};

function both(scale: Scale): { readonly si: Scale; readonly us: Scale } {
  return { si: scale, us: scale };
}

/** The unit in which an SI value of this size is shown. */
export function displayUnit(value: number, dimension: Dimension, system: UnitSystem): Unit {
  const scale = scales[dimension]?.[system] ?? [];
  const symbol = scale.findLast(([from]) => Math.abs(value) >= from)?.[1] ?? "";
  const unit = unitSpelled(symbol, dimension);
  invariant(unit, "Every dimension has a unit to be shown in.", { dimension, symbol });
  return unit;
}

/** An SI value in a unit. */
export function fromSi(value: number, unit: Unit): number {
  return (value * unit.denominator) / unit.numerator - unit.zero;
}

/**
 * Writes an SI value with a unit, to so many significant digits; without `digits`, with as few as read back as the same value.
 *
 * @example formatQuantity(0.0009, "length") // "0.9 mm"
 */
export function formatQuantity(
  value: number,
  dimension: Dimension,
  options: { readonly system?: UnitSystem; readonly digits?: number } = {},
): string {
  const unit = displayUnit(value, dimension, options.system ?? "si");
  const shown = fromSi(value, unit);
  const number =
    options.digits === undefined ? shortest(shown, value, unit) : Number(shown.toPrecision(options.digits));
  return `${number} ${unit.symbol}`;
}

function shortest(shown: number, value: number, unit: Unit): number {
  for (let digits = 1; digits <= 17; digits += 1) {
    const rounded = Number(shown.toPrecision(digits));
    if (inSi(rounded, unit) === value) return rounded;
  }
  return shown;
}
