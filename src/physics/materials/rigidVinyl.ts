// Rigid polyvinyl chloride: clear, stiff, and the one that time at heat destroys.
import type { Material } from "./material.ts";
import { crawford, crystals, fractureByLikeness, handbook, rheology, stability } from "./materialSources.ts";

export const rigidVinyl: Material = {
  name: "PVC-U",
  fullName: "rigid (unplasticized) polyvinyl chloride, stabilized bottle compounds",
  conductivity: crawford(0.16, 0.14, 0.19),
  density: crawford(1400, 1320, 1450),
  specificHeat: crawford(900, 850, 1200),
  meltDensity: handbook(1275, 1250, 1300),
  coolingDiffusivity: handbook(1.0e-7, 0.9e-7, 1.1e-7),
  heatOfFusion: crystals(0, 0, 15e3),
  meltTemperature: handbook(195, 180, 205),
  moldTemperature: handbook(20, 10, 30),
  demoldTemperature: handbook(55, 45, 60),
  zeroShearViscosity: rheology(2e5, 3e4, 1e6),
  dieViscosity: rheology(2500, 1000, 5000),
  powerLawIndex: rheology(0.4, 0.3, 0.6),
  fractureStress: fractureByLikeness(0.2e6, 0.1e6, 0.3e6),
  timeAtHeat: stability(600, 300, 1200),
};
