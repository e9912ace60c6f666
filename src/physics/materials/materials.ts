// The catalogue: the plastics that a scenario may name.
import { glycolPolyester } from "./glycolPolyester.ts";
import { highDensityPolyethylene } from "./highDensityPolyethylene.ts";
import { lowDensityPolyethylene } from "./lowDensityPolyethylene.ts";
import type { Material } from "./material.ts";
import { polycarbonate } from "./polycarbonate.ts";
import { polypropylene } from "./polypropylene.ts";
import { rigidVinyl } from "./rigidVinyl.ts";

/** By the name that a scenario uses. */
export const materials: ReadonlyMap<string, Material> = new Map(
  [highDensityPolyethylene, lowDensityPolyethylene, polypropylene, rigidVinyl, glycolPolyester, polycarbonate].map(
    (material) => [material.name, material],
  ),
);
