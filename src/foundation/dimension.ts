// The kinds of quantities in a scenario, each with its SI unit and an example for remedies.

interface DimensionFacts {
  /** The words of a message: "a time". */
  readonly noun: string;
  /** The unit inside the program. */
  readonly si: string;
  readonly example: string;
  /** The unit to suggest for a number without one. */
  readonly usual: string;
  /** Only a temperature can lie below zero. */
  readonly signed?: true;
}

export const dimensions = {
  time: { noun: "a time", si: "s", example: "7.5 s", usual: "s" },
  mass: { noun: "a mass", si: "kg", example: "42 g", usual: "g" },
  rate: { noun: "a mass rate", si: "kg/s", example: "110 kg/h", usual: "kg/h" },
  length: { noun: "a length", si: "m", example: "0.9 mm", usual: "mm" },
  area: { noun: "an area", si: "m²", example: "180 cm²", usual: "cm²" },
  volume: { noun: "a volume", si: "m³", example: "750 mL", usual: "mL" },
  pressure: { noun: "a pressure", si: "Pa", example: "7 bar", usual: "bar" },
  force: { noun: "a force", si: "N", example: "60 kN", usual: "kN" },
  temperature: { noun: "a temperature", si: "K", example: "65 °C", usual: "°C", signed: true },
  temperatureDifference: { noun: "a temperature difference", si: "K", example: "5 °C", usual: "°C", signed: true },
  share: { noun: "a share", si: "1", example: "20 %", usual: "%" },
  density: { noun: "a density", si: "kg/m³", example: "760 kg/m³", usual: "kg/m³" },
  conductivity: { noun: "a thermal conductivity", si: "W/(m K)", example: "0.25 W/(m K)", usual: "W/(m K)" },
  diffusivity: { noun: "a thermal diffusivity", si: "m²/s", example: "0.12 mm²/s", usual: "mm²/s" },
  specificHeat: { noun: "a specific heat", si: "J/(kg K)", example: "2.2 kJ/(kg K)", usual: "kJ/(kg K)" },
  specificEnergy: { noun: "an energy per mass", si: "J/kg", example: "0.25 kWh/kg", usual: "kJ/kg" },
  heatTransfer: { noun: "a heat transfer coefficient", si: "W/(m² K)", example: "1000 W/(m² K)", usual: "W/(m² K)" },
  molarEnergy: { noun: "an energy per mole", si: "J/mol", example: "28 kJ/mol", usual: "kJ/mol" },
  thermalResistance: { noun: "a thermal resistance", si: "K/W", example: "0.5 K/kW", usual: "K/kW" },
  volumeFlow: { noun: "a volume flow", si: "m³/s", example: "20 L/min", usual: "L/min" },
  viscosity: { noun: "a viscosity", si: "Pa s", example: "20000 Pa s", usual: "Pa s" },
  lineLoad: { noun: "a force per length", si: "N/m", example: "100 N/mm", usual: "N/mm" },
  power: { noun: "a power", si: "W", example: "45 kW", usual: "kW" },
  speed: { noun: "a speed of rotation", si: "1/s", example: "40 rpm", usual: "rpm" },
  angle: { noun: "an angle", si: "°", example: "17.7 deg", usual: "deg" },
  conductance: { noun: "a sonic conductance", si: "m³/(s Pa)", example: "5 dm³/(s bar)", usual: "dm³/(s bar)" },
  cycles: { noun: "a number of cycles", si: "1", example: "20 cycles", usual: "cycles" },
  costPerMass: { noun: "a cost per mass", si: "1/kg", example: "1.40 per kg", usual: "per kg" },
  costPerTime: { noun: "a cost per time", si: "1/s", example: "35 per h", usual: "per h" },
  countPerTime: { noun: "a number per time", si: "1/s", example: "395 per h", usual: "per h" },
  costPerEnergy: { noun: "a cost per energy", si: "1/J", example: "0.18 per kWh", usual: "per kWh" },
  costPerVolume: { noun: "a cost per volume", si: "1/m³", example: "0.02 per m³", usual: "per m³" },
  costPerPart: { noun: "a cost per part", si: "1", example: "12 per 1000 parts", usual: "per part" },
  parts: { noun: "a number of parts", si: "1", example: "2000000 parts", usual: "parts" },
} as const satisfies Record<string, DimensionFacts>;

export type Dimension = keyof typeof dimensions;

export function dimensionFacts(dimension: Dimension): DimensionFacts {
  return dimensions[dimension];
}
