// A material of the catalog with a user's own values in place of some of its own.
import type { Datum } from "./datum.ts";
import type { Material, MaterialProperty } from "./material.ts";

/**
 * A material in which a user's own values replace those of the catalog.
 *
 *     each own value is taken as it is, its range shrunk to it
 *
 * Units: those of the material table.
 * Shape: a property without an own value stays as it was.
 * Holds for: any property of the material table.
 * Source: Derived here from the rule that a measured value of the user's own grade replaces a handbook's
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
