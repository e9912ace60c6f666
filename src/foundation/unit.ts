// The units of quantities, each an exact fraction of the SI unit.
//
// Exact by definition (NIST SP 811, 2008, appendix B.8, from memory): international inch 25.4 mm, international
// pound 0.45359237 kg, standard gravity 9.80665 m/s², US gallon 231 in³, Btu (International Table) 1055.05585262 J,
// and with them lbf, psi, hp (550 ft lbf/s) and the compound units.
import type { Dimension } from "./dimension.ts";

export interface Unit {
  readonly symbol: string;
  readonly dimension: Dimension;
  /** SI value = (written + zero) × numerator / denominator: two whole numbers, so that 0.9 mm is 0.9 / 1000 and no other double. */
  readonly numerator: number;
  readonly denominator: number;
  /** Where the scale's zero lies below SI's, in the unit itself; 0 for all but temperatures. */
  readonly zero: number;
  /** Other spellings. */
  readonly aliases: readonly string[];
}

type Row = readonly [symbol: string, numerator: number, denominator: number, ...aliases: string[]];

const kilowattHour = 3_600_000;
/** One pound-force in 1e-13 N: 0.45359237 kg × 9.80665 m/s². */
const poundForce = 44_482_216_152_605;
const newtons = 10_000_000_000_000;

const linear: Readonly<Partial<Record<Dimension, readonly Row[]>>> = {
  time: [
    ["s", 1, 1, "sec", "second", "seconds"],
    ["ms", 1, 1000],
    ["min", 60, 1, "minute", "minutes"],
    ["h", 3600, 1, "hr", "hour", "hours"],
    ["d", 86_400, 1, "day", "days"],
    ["week", 604_800, 1, "weeks"],
  ],
  mass: [
    ["kg", 1, 1],
    ["g", 1, 1000],
    ["mg", 1, 1_000_000],
    ["t", 1000, 1],
    ["lb", 45_359_237, 100_000_000, "lbs"],
    ["oz", 28_349_523_125, 1_000_000_000_000],
  ],
  rate: [
    ["kg/h", 1, 3600, "kg/hr"],
    ["kg/s", 1, 1],
    ["kg/min", 1, 60],
    ["g/s", 1, 1000],
    ["g/min", 1, 60_000],
    ["lb/h", 45_359_237, 360_000_000_000, "lb/hr", "lbs/h", "lbs/hr"],
  ],
  length: [
    ["mm", 1, 1000],
    ["m", 1, 1],
    ["cm", 1, 100],
    ["um", 1, 1_000_000, "µm", "μm"],
    ["in", 254, 10_000, "inch", "inches"],
    ["ft", 3048, 10_000],
    ["mil", 254, 10_000_000],
  ],
  area: [
    ["cm²", 1, 10_000, "cm2"],
    ["mm²", 1, 1_000_000, "mm2"],
    ["m²", 1, 1, "m2"],
    ["in²", 64_516, 100_000_000, "in2"],
  ],
  volume: [
    ["mL", 1, 1_000_000, "ml", "cm³", "cm3"],
    ["L", 1, 1000, "l", "dm³", "dm3"],
    ["m³", 1, 1, "m3"],
    ["gal", 3_785_411_784, 1_000_000_000_000],
    ["fl oz", 295_735_295_625, 10_000_000_000_000_000],
    ["in³", 16_387_064, 1_000_000_000_000, "in3"],
  ],
  pressure: [
    ["bar", 100_000, 1],
    ["mbar", 100, 1],
    ["Pa", 1, 1],
    ["kPa", 1000, 1],
    ["MPa", 1_000_000, 1],
    ["psi", 44_482_216_152_605, 6_451_600_000],
  ],
  force: [
    ["kN", 1000, 1],
    ["N", 1, 1],
    ["lbf", poundForce, newtons],
    ["tonf", poundForce * 2, newtons / 1000, "US ton"],
  ],
  share: [["%", 1, 100, "percent"]],
  density: [
    ["kg/m³", 1, 1, "kg/m3"],
    ["g/cm³", 1000, 1, "g/cm3"],
    ["lb/ft³", 453_592_370_000, 28_316_846_592, "lb/ft3"],
  ],
  conductivity: [["W/(m K)", 1, 1, "W/(m·K)", "W/mK", "W/m K"]],
  diffusivity: [
    ["mm²/s", 1, 1_000_000, "mm2/s"],
    ["m²/s", 1, 1, "m2/s"],
  ],
  specificHeat: [
    ["kJ/(kg K)", 1000, 1, "kJ/(kg·K)", "kJ/kgK", "kJ/kg K"],
    ["J/(kg K)", 1, 1, "J/(kg·K)", "J/kgK", "J/kg K"],
    ["BTU/(lb °F)", 41_868, 10, "BTU/lb°F", "Btu/(lb °F)"],
  ],
  specificEnergy: [
    ["kJ/kg", 1000, 1],
    ["J/kg", 1, 1],
    ["kWh/kg", kilowattHour, 1],
    ["BTU/lb", 2326, 1, "Btu/lb"],
  ],
  heatTransfer: [["W/(m² K)", 1, 1, "W/(m²·K)", "W/m²K", "W/(m2 K)"]],
  molarEnergy: [
    ["kJ/mol", 1000, 1],
    ["J/mol", 1, 1],
    ["kcal/mol", 4184, 1],
  ],
  thermalResistance: [
    ["K/kW", 1, 1000, "°C/kW"],
    ["K/W", 1, 1, "°C/W"],
  ],
  volumeFlow: [
    ["L/min", 1, 60_000, "l/min"],
    ["m³/h", 1, 3600, "m3/h"],
    ["m³/s", 1, 1, "m3/s"],
    ["gal/min", 473_176_473, 7_500_000_000_000, "gpm"],
  ],
  viscosity: [
    ["Pa s", 1, 1, "Pa·s", "Pas"],
    ["kPa s", 1000, 1, "kPa·s"],
  ],
  lineLoad: [
    ["N/mm", 1000, 1],
    ["kN/m", 1000, 1],
    ["N/m", 1, 1],
    ["lbf/in", poundForce, 254_000_000_000],
  ],
  power: [
    ["kW", 1000, 1],
    ["W", 1, 1],
    ["hp", 7_456_998_715_822_702, 10_000_000_000_000],
  ],
  speed: [["rpm", 1, 60, "1/min"]],
  angle: [["deg", 1, 1, "°", "degrees"]],
  conductance: [["dm³/(s bar)", 1, 100_000_000, "dm3/(s bar)", "dm³/(s·bar)", "L/(s bar)"]],
  cycles: [["cycles", 1, 1, "cycle"]],
  costPerMass: [
    ["per kg", 1, 1, "/kg"],
    ["per t", 1, 1000, "/t"],
    ["per lb", 100_000_000, 45_359_237, "/lb"],
  ],
  costPerTime: [["per h", 1, 3600, "/h", "per hour"]],
  countPerTime: [
    ["per h", 1, 3600, "/h", "per hour", "an hour"],
    ["per min", 1, 60, "/min", "per minute"],
  ],
  costPerEnergy: [["per kWh", 1, kilowattHour, "/kWh"]],
  costPerVolume: [["per m³", 1, 1, "per m3", "/m³", "/m3"]],
  costPerPart: [
    ["per part", 1, 1, "/part"],
    ["per 1000 parts", 1, 1000, "per 1000", "/1000"],
  ],
  parts: [["parts", 1, 1, "part"]],
};

function unitOf(dimension: Dimension, [symbol, numerator, denominator, ...aliases]: Row): Unit {
  return { symbol, dimension, numerator, denominator, zero: 0, aliases };
}

const celsius = { symbol: "°C", numerator: 1, denominator: 1, aliases: ["degC", "C"] } as const;
const fahrenheit = { symbol: "°F", numerator: 5, denominator: 9, aliases: ["degF", "F"] } as const;
const kelvin = { symbol: "K", numerator: 1, denominator: 1, zero: 0, aliases: [] } as const;

const thermal: Readonly<Partial<Record<Dimension, readonly Unit[]>>> = {
  temperature: [
    { ...celsius, dimension: "temperature", zero: 273.15 },
    { ...fahrenheit, dimension: "temperature", zero: 459.67 },
    { ...kelvin, dimension: "temperature" },
  ],
  temperatureDifference: [
    { ...celsius, dimension: "temperatureDifference", zero: 0 },
    { ...fahrenheit, dimension: "temperatureDifference", zero: 0 },
    { ...kelvin, dimension: "temperatureDifference" },
  ],
};

const asked = new Map<Dimension, readonly Unit[]>();

/** The usual unit first. Made on demand, since a scenario uses few dimensions. */
export function unitsOf(dimension: Dimension): readonly Unit[] {
  const rows = linear[dimension] ?? [];
  const units = asked.get(dimension) ?? thermal[dimension] ?? rows.map((row) => unitOf(dimension, row));
  asked.set(dimension, units);
  return units;
}

/** Of all dimensions. */
export function allUnits(): readonly Unit[] {
  return ([...Object.keys(linear), ...Object.keys(thermal)] as Dimension[]).flatMap(unitsOf);
}

/** Every spelling of the dimension's units, the usual one first. */
export function spellingsOf(dimension: Dimension): readonly string[] {
  return unitsOf(dimension).flatMap((unit) => [unit.symbol, ...unit.aliases]);
}

/** The unit with this spelling, or undefined; case matters, since mg is not Mg. */
export function unitSpelled(spelling: string, dimension: Dimension): Unit | undefined {
  const plain = spelling.replaceAll(/\s+/gu, " ");
  return unitsOf(dimension).find((unit) => unit.symbol === plain || unit.aliases.includes(plain));
}
