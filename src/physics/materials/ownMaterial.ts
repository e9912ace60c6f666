// A material of the catalog with some values replaced by the user's.
import type { Datum } from "./datum.ts";
import type { Material, MaterialProperty } from "./material.ts";

/**
 * A material in which values of the user replace those of the catalog.
 *
 *     the range of each replaced value is the value itself
 *
 * Units: those of the material table.
 * Shape: a property without a value of the user stays as it is.
 * Holds for: any property of the material table.
 * Source: Derived here from the rule that a measured value of the user's grade replaces that of a handbook
 * Throws: nothing.
 *
 * @example
 * ownMaterial(materials.get("HDPE"), { meltDensity: 755 }).meltDensity.high // 755
 */
export function ownMaterial(base: Material, values: Readonly<Partial<Record<MaterialProperty, number>>>): Material {
  const own = Object.entries(values).map(([property, value]): [string, Datum] => [
    property,
    { value, low: value, high: value, source: "the scenario", confidence: "read" },
  ]);
  return { ...base, ...Object.fromEntries(own) };
}
