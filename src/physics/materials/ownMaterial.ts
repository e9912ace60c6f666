// A catalogue plastic with the values that a user knows better.
import type { Datum, Material } from "./material.ts";

/** The properties that hold a number. */
export type MaterialProperty = {
  [Key in keyof Material]-?: NonNullable<Material[Key]> extends Datum ? Key : never;
}[keyof Material];

/**
 * A material in which a user's own values stand in place of the catalogue's.
 *
 *     each own value is taken as it is, its range shrunk to it
 *
 * Units: those of Material.
 * Shape: what is not given stays as it was.
 * Holds for: any property that is a number.
 * Source: Derived here from the rule that a measured value of the user's own grade wins over a handbook's
 * Throws: nothing.
 *
 * @example
 * ownMaterial(highDensityPolyethylene, { meltDensity: 755 }).meltDensity.high // 755
 */
export function ownMaterial(base: Material, values: Readonly<Partial<Record<MaterialProperty, number>>>): Material {
  const own = Object.entries(values).map(([property, value]): [string, Datum] => [
    property,
    { value, low: value, high: value, source: "the scenario", confidence: "read" },
  ]);
  return { ...base, ...Object.fromEntries(own) };
}
