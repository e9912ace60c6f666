// Low-density polyethylene: the plastic of squeeze bottles and tubes.
import type { Material } from "./material.ts";
import { crawford, crystals, fracture, handbook, rheology } from "./materialSources.ts";

export const lowDensityPolyethylene: Material = {
  name: "LDPE",
  fullName: "low-density polyethylene",
  conductivity: crawford(0.24, 0.24, 0.38),
  density: crawford(920, 915, 930),
  specificHeat: crawford(2200, 1900, 2600),
  meltDensity: handbook(760, 740, 780),
  coolingDiffusivity: handbook(1.0e-7, 0.9e-7, 1.1e-7),
  heatOfFusion: crystals(125e3, 100e3, 145e3),
  meltTemperature: handbook(160, 140, 180),
  moldTemperature: handbook(10, 5, 20),
  demoldTemperature: handbook(55, 45, 65),
  zeroShearViscosity: rheology(4e4, 1e4, 2e5),
  dieViscosity: rheology(1200, 500, 2500),
  powerLawIndex: rheology(0.4, 0.3, 0.5),
  fractureStress: fracture(0.15e6, 0.1e6, 0.3e6),
};
