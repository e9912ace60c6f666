// Glycol-modified polyester: the clear polyester whose melt is strong enough for a parison.
import type { Material } from "./material.ts";
import { crystals, fractureByLikeness, handbook, rheology } from "./materialSources.ts";

export const glycolPolyester: Material = {
  name: "PETG",
  fullName: "glycol-modified polyethylene terephthalate, extrusion blow molding grades",
  conductivity: handbook(0.2, 0.19, 0.24),
  density: handbook(1270, 1250, 1330),
  specificHeat: handbook(1200, 1000, 1300),
  meltDensity: handbook(1125, 1100, 1150),
  coolingDiffusivity: handbook(0.95e-7, 0.9e-7, 1.0e-7),
  heatOfFusion: crystals(0, 0, 0),
  meltTemperature: handbook(235, 220, 250),
  moldTemperature: handbook(20, 10, 30),
  demoldTemperature: handbook(57, 50, 65),
  zeroShearViscosity: rheology(1e4, 2e3, 5e4),
  dieViscosity: rheology(1200, 600, 2000),
  powerLawIndex: rheology(0.6, 0.4, 0.8),
  fractureStress: fractureByLikeness(0.2e6, 0.1e6, 0.3e6),
};
