// Polycarbonate: the plastic of large water bottles, run hot and in warm molds.
import type { Material } from "./material.ts";
import { crawford, crystals, fractureByLikeness, handbook, rheology } from "./materialSources.ts";

export const polycarbonate: Material = {
  name: "PC",
  fullName: "polycarbonate, branched blow molding grades",
  conductivity: crawford(0.2, 0.19, 0.22),
  density: crawford(1150, 1150, 1220),
  specificHeat: crawford(1200, 1150, 1300),
  meltDensity: handbook(1050, 1020, 1080),
  coolingDiffusivity: handbook(1.15e-7, 1.0e-7, 1.3e-7),
  heatOfFusion: crystals(0, 0, 0),
  meltTemperature: handbook(260, 240, 280),
  moldTemperature: handbook(70, 50, 90),
  demoldTemperature: handbook(112, 100, 125),
  zeroShearViscosity: rheology(1e4, 3e3, 4e4),
  dieViscosity: rheology(1500, 800, 2500),
  powerLawIndex: rheology(0.65, 0.4, 0.9),
  fractureStress: fractureByLikeness(0.2e6, 0.1e6, 0.3e6),
};
