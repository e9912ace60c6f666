// Polypropylene: the plastic of hot-filled and hinged bottles.
import type { Material } from "./material.ts";
import { crawford, crystals, fracture, handbook, rheology } from "./materialSources.ts";

export const polypropylene: Material = {
  name: "PP",
  fullName: "polypropylene, blow molding grades",
  conductivity: crawford(0.2, 0.17, 0.23),
  density: crawford(905, 895, 915),
  specificHeat: crawford(2000, 1700, 2200),
  meltDensity: handbook(740, 720, 760),
  coolingDiffusivity: handbook(0.75e-7, 0.6e-7, 0.9e-7),
  heatOfFusion: crystals(95e3, 70e3, 110e3),
  meltTemperature: handbook(220, 200, 235),
  moldTemperature: handbook(20, 10, 30),
  demoldTemperature: handbook(75, 60, 90),
  zeroShearViscosity: rheology(2e4, 5e3, 1e5),
  dieViscosity: rheology(900, 400, 1500),
  powerLawIndex: rheology(0.38, 0.25, 0.5),
  fractureStress: fracture(0.15e6, 0.1e6, 0.3e6),
};
