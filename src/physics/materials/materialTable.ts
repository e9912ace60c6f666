// The table of materials: a row for each property, in it a cell for each material with value, low, high and source.
import type { Dimension } from "#foundation/dimension.ts";
import type { Datum } from "./datum.ts";
import {
  crawford,
  crystals,
  fracture,
  fractureByAnalogy,
  handbook,
  heatCapacity,
  measured,
  middle,
  rheology,
  stability,
} from "./materialSources.ts";

export const fullNames = {
  HDPE: "high-density polyethylene, blow molding grades",
  LDPE: "low-density polyethylene",
  PP: "polypropylene, blow molding grades",
  "PVC-U": "rigid (unplasticized) polyvinyl chloride, stabilized bottle compounds",
  PETG: "glycol-modified polyethylene terephthalate, extrusion blow molding grades",
  PC: "polycarbonate, branched blow molding grades",
};

export type MaterialName = keyof typeof fullNames;

export interface PropertyRow {
  /** The scenario key that replaces the value, where it has another name than the property. */
  readonly key?: string;
  /** Values are in SI, temperatures in °C. */
  readonly dimension: Dimension;
  readonly above?: number;
  readonly atLeast?: number;
  readonly atMost?: number;
  readonly meaning: string;
  /** An example in a scenario; absent where the example of the dimension suffices. */
  readonly example?: string;
  /** A material without a cell has no such limit. */
  readonly of: Readonly<Partial<Record<MaterialName, Datum>>>;
}

/** Shear rate of `dieViscosity`, 1/s. */
export const DIE_REFERENCE_RATE = 100;

/**
 * Each value is about the middle of its range. Between melt and demold temperature conductivity, the mean of both densities, enthalpy
 * and effective diffusivity belong together; a test holds them to one another.
 */
export const materialTable = {
  density: {
    dimension: "density",
    example: "950 kg/m³",
    above: 0,
    meaning: "Density of the solid at room temperature.",
    of: {
      HDPE: crawford(950, 940, 965),
      LDPE: crawford(920, 915, 930),
      PP: crawford(905, 895, 915),
      "PVC-U": crawford(1400, 1320, 1450),
      PETG: handbook(1270, 1250, 1290),
      PC: measured(1200, 1150, 1240),
    },
  },
  meltDensity: {
    dimension: "density",
    above: 0,
    meaning: "Density of the melt. It gives the volume of a shot from its mass.",
    of: {
      HDPE: handbook(760, 740, 780),
      LDPE: handbook(760, 740, 780),
      PP: handbook(740, 720, 760),
      "PVC-U": handbook(1275, 1250, 1300),
      PETG: handbook(1125, 1100, 1150),
      PC: handbook(1050, 1020, 1080),
    },
  },
  conductivity: {
    dimension: "conductivity",
    atLeast: 0.01,
    atMost: 1000,
    meaning: "Mean thermal conductivity between melt and demold temperature.",
    of: {
      HDPE: middle(0.36, 0.25, 0.53),
      LDPE: middle(0.31, 0.24, 0.38),
      PP: middle(0.19, 0.15, 0.22),
      "PVC-U": middle(0.18, 0.14, 0.21),
      PETG: middle(0.21, 0.19, 0.24),
      PC: middle(0.23, 0.19, 0.25),
    },
  },
  specificHeat: {
    dimension: "specificHeat",
    above: 0,
    meaning: "Mean specific heat of the solid, without the heat of fusion.",
    of: {
      HDPE: crawford(2200, 1800, 2700),
      LDPE: crawford(2200, 1900, 2600),
      PP: crawford(2000, 1680, 2350),
      "PVC-U": heatCapacity(1000, 900, 1200),
      PETG: handbook(1250, 1000, 1400),
      PC: measured(1350, 1170, 1500),
    },
  },
  meltSpecificHeat: {
    dimension: "specificHeat",
    above: 0,
    meaning: "Mean specific heat of the melt.",
    of: {
      HDPE: heatCapacity(2500, 2200, 2700),
      LDPE: heatCapacity(2500, 2200, 2700),
      PP: heatCapacity(2700, 2500, 2900),
      "PVC-U": heatCapacity(1550, 1400, 1700),
      PETG: heatCapacity(1950, 1800, 2100),
      PC: heatCapacity(2100, 1950, 2250),
    },
  },
  transitionTemperature: {
    dimension: "temperature",
    example: "130 °C",
    meaning: "Temperature at which crystals melt, or of the glass transition of an amorphous material.",
    of: {
      HDPE: heatCapacity(130, 125, 135),
      LDPE: heatCapacity(110, 105, 115),
      PP: heatCapacity(163, 158, 168),
      "PVC-U": heatCapacity(82, 75, 87),
      PETG: heatCapacity(80, 75, 85),
      PC: heatCapacity(147, 140, 150),
    },
  },
  coolingDiffusivity: {
    key: "diffusivity",
    dimension: "diffusivity",
    above: 0,
    meaning: "Effective thermal diffusivity between melt and demold temperature, crystallization included.",
    of: {
      HDPE: handbook(1.05e-7, 0.9e-7, 1.2e-7),
      LDPE: handbook(1.0e-7, 0.9e-7, 1.1e-7),
      PP: handbook(0.75e-7, 0.6e-7, 0.9e-7),
      // The enthalpy of the melt allows no more than 0.92e-7.
      "PVC-U": handbook(0.92e-7, 0.8e-7, 1.1e-7),
      PETG: handbook(0.95e-7, 0.9e-7, 1.0e-7),
      PC: handbook(1.1e-7, 1.0e-7, 1.3e-7),
    },
  },
  heatOfFusion: {
    dimension: "specificEnergy",
    example: "190 kJ/kg",
    meaning: "Heat of fusion of the grade as it crystallizes; 0 for an amorphous material.",
    of: {
      HDPE: crystals(200e3, 180e3, 220e3),
      LDPE: crystals(125e3, 100e3, 145e3),
      PP: crystals(95e3, 70e3, 110e3),
      "PVC-U": crystals(6e3, 0, 15e3),
      PETG: crystals(0, 0, 0),
      PC: crystals(0, 0, 0),
    },
  },
  zeroShearViscosity: {
    key: "viscosity",
    dimension: "viscosity",
    above: 0,
    meaning: "Zero-shear viscosity at the material's `meltTemperature`. The sag follows from it.",
    of: {
      HDPE: rheology(1e5, 2e4, 1e6),
      LDPE: rheology(4e4, 1e4, 2e5),
      PP: rheology(2e4, 5e3, 1e5),
      "PVC-U": rheology(2e5, 3e4, 1e6),
      PETG: rheology(1e4, 2e3, 5e4),
      PC: rheology(1e4, 3e3, 4e4),
    },
  },
  dieViscosity: {
    dimension: "viscosity",
    example: "2500 Pa s",
    above: 0,
    meaning:
      "Viscosity at a shear rate of 100 1/s and the material's `meltTemperature`. The shear stress in the die follows from it and from `powerLawIndex`.",
    of: {
      HDPE: rheology(2500, 1000, 4000),
      LDPE: rheology(1200, 500, 2500),
      PP: rheology(900, 400, 1500),
      "PVC-U": rheology(2500, 1000, 5000),
      PETG: rheology(1200, 600, 2000),
      PC: rheology(1500, 800, 2500),
    },
  },
  activationEnergy: {
    dimension: "molarEnergy",
    example: "28 kJ/mol",
    meaning: "Activation energy of flow: a hotter melt is thinner. `0 kJ/mol` keeps the viscosity constant.",
    of: {
      HDPE: rheology(28e3, 25e3, 34e3),
      LDPE: rheology(48e3, 45e3, 55e3),
      PP: rheology(42e3, 38e3, 46e3),
      "PVC-U": rheology(100e3, 85e3, 130e3),
      PETG: rheology(80e3, 60e3, 100e3),
      PC: rheology(105e3, 85e3, 125e3),
    },
  },
  powerLawIndex: {
    dimension: "share",
    example: "45 %",
    atLeast: 0.1,
    atMost: 1,
    meaning: "Index n of the power law around a shear rate of 100 1/s, such as `45 %`.",
    of: {
      HDPE: rheology(0.45, 0.3, 0.6),
      LDPE: rheology(0.4, 0.3, 0.5),
      PP: rheology(0.38, 0.25, 0.5),
      "PVC-U": rheology(0.4, 0.3, 0.6),
      PETG: rheology(0.6, 0.4, 0.8),
      PC: rheology(0.65, 0.4, 0.9),
    },
  },
  fractureStress: {
    dimension: "pressure",
    example: "0.25 MPa",
    above: 0,
    meaning: "Shear stress at the die wall above which gross melt fracture is expected, such as `0.25 MPa`.",
    of: {
      HDPE: fracture(0.2e6, 0.1e6, 0.3e6),
      LDPE: fracture(0.15e6, 0.1e6, 0.3e6),
      PP: fracture(0.15e6, 0.1e6, 0.3e6),
      "PVC-U": fractureByAnalogy(0.2e6, 0.1e6, 0.3e6),
      PETG: fractureByAnalogy(0.2e6, 0.1e6, 0.3e6),
      PC: fractureByAnalogy(0.2e6, 0.1e6, 0.3e6),
    },
  },
  meltTemperature: {
    dimension: "temperature",
    example: "190 °C",
    meaning: "Usual melt temperature.",
    of: {
      HDPE: handbook(190, 170, 210),
      LDPE: handbook(160, 140, 180),
      PP: handbook(220, 200, 235),
      "PVC-U": handbook(195, 180, 205),
      PETG: handbook(235, 220, 250),
      PC: handbook(260, 240, 280),
    },
  },
  moldTemperature: {
    dimension: "temperature",
    example: "15 °C",
    meaning: "Usual mold temperature.",
    of: {
      HDPE: handbook(10, 5, 20),
      LDPE: handbook(10, 5, 20),
      PP: handbook(20, 10, 30),
      "PVC-U": handbook(20, 10, 30),
      PETG: handbook(20, 10, 30),
      PC: handbook(70, 50, 90),
    },
  },
  demoldTemperature: {
    dimension: "temperature",
    meaning: "Temperature below which a part keeps its shape.",
    of: {
      HDPE: handbook(65, 50, 80),
      LDPE: handbook(55, 45, 65),
      PP: handbook(75, 60, 90),
      "PVC-U": handbook(55, 45, 60),
      PETG: handbook(57, 50, 65),
      PC: handbook(112, 100, 125),
    },
  },
  timeAtHeat: {
    key: "maxTimeAtHeat",
    dimension: "time",
    example: "10 min",
    above: 0,
    meaning: "Longest time at melt temperature before the material degrades.",
    of: {
      "PVC-U": stability(600, 300, 1200),
    },
  },
} as const satisfies Readonly<Record<string, PropertyRow>>;
