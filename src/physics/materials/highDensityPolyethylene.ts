// High-density polyethylene, blow molding grades: the plastic of bottles and canisters.
import type { Material } from "./material.ts";
import { crawford, crystals, fracture, handbook, rheology } from "./materialSources.ts";

export const highDensityPolyethylene: Material = {
  name: "HDPE",
  fullName: "high-density polyethylene, blow molding grades",
  conductivity: crawford(0.25, 0.25, 0.52),
  density: crawford(950, 940, 965),
  specificHeat: crawford(2200, 1800, 2700),
  meltDensity: handbook(760, 740, 780),
  coolingDiffusivity: handbook(1.05e-7, 0.9e-7, 1.2e-7),
  heatOfFusion: crystals(200e3, 180e3, 220e3),
  meltTemperature: handbook(190, 170, 210),
  moldTemperature: handbook(10, 5, 20),
  demoldTemperature: handbook(65, 50, 80),
  zeroShearViscosity: rheology(1e5, 2e4, 1e6),
  dieViscosity: rheology(2500, 1000, 4000),
  powerLawIndex: rheology(0.45, 0.3, 0.6),
  fractureStress: fracture(0.2e6, 0.1e6, 0.3e6),
};
