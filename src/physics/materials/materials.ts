// The catalog of materials that a scenario may name, read from the columns of the material table.
import type { Datum } from "./datum.ts";
import type { Material } from "./material.ts";
import { fullNames, materialTable, type MaterialName, type PropertyRow } from "./materialTable.ts";

const rows: readonly (readonly [string, PropertyRow])[] = Object.entries(materialTable);

function columnOf(name: MaterialName): Material {
  const data = rows.flatMap(([property, { of }]): readonly (readonly [string, Datum])[] => {
    const datum = of[name];
    return datum === undefined ? [] : [[property, datum]];
  });
  return { name, fullName: fullNames[name], ...Object.fromEntries(data) } as Material;
}

/** By the name that a scenario uses. */
export const materials: ReadonlyMap<string, Material> = new Map(
  (Object.keys(fullNames) as MaterialName[]).map((name) => [name, columnOf(name)]),
);
