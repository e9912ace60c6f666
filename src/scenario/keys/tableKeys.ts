// Scenario keys made from the rows of the two physical tables: the key table of the process window, and the material table.
import type * as z from "zod/mini";
import { dimensionFacts, type Dimension } from "#foundation/dimension.ts";
import { materialTable, type PropertyRow } from "#physics/materials/materialTable.ts";
import type { WindowKeyRow } from "#physics/window/windowKeyRow.ts";
import { windowKeys, type QuantityKey, type WindowKey } from "#physics/window/windowKeys.ts";
import { optional, required } from "#scenario/values/key.ts";
import type { Leaf } from "#scenario/values/leaf.ts";
import { mass, quantity, ratio, type Bounds } from "#scenario/values/quantityLeaf.ts";

type Required = z.ZodMiniNonOptional<Leaf<number>>;
type Optional = z.ZodMiniOptional<Leaf<number>>;

/** The last part of a path that lies directly in the section. */
type In<Section extends string, Path> = Path extends `${Section}.${infer Key}`
  ? Key extends `${string}.${string}`
    ? never
    : Key
  : never;

type WindowShape<Section extends string> = {
  readonly [Path in QuantityKey as In<Section, Path>]: (typeof windowKeys)[Path] extends { readonly required: true }
    ? Required
    : Optional;
};

const windowRows: readonly (readonly [string, WindowKeyRow])[] = Object.entries(windowKeys);

/** The plain quantities that lie directly in a section, such as `product` or `product.die`. */
export function windowShape<Section extends string>(section: Section): WindowShape<Section> {
  const shape = windowRows.flatMap(([path, row]) => {
    const [parent, key] = split(path);
    if (parent !== section || row.from !== undefined || row.dimension === "count") return [];
    const make = row.required === true ? required : optional;
    return [[key, make(quantityOf(row.dimension, row), describedRow(row), row.example)] as const];
  });
  return Object.fromEntries(shape) as WindowShape<Section>;
}

/** "product.die.gap" as "product.die" and "gap". */
function split(path: string): readonly [parent: string, key: string] {
  const dot = path.lastIndexOf(".");
  return [path.slice(0, dot), path.slice(dot + 1)];
}

/** For keys of another form than a plain quantity. */
export function meaningOf(path: WindowKey): string {
  return describedRow(windowKeys[path]);
}

function describedRow({ meaning, otherwise }: Pick<WindowKeyRow, "meaning" | "otherwise">): string {
  return otherwise === undefined ? meaning : `${meaning} Where absent: ${otherwise.words} (${otherwise.reason}).`;
}

type Table = typeof materialTable;
type PropertyKey<Property extends keyof Table> = Table[Property] extends { readonly key: infer Key extends string }
  ? Key
  : Property;
type MaterialShape = { readonly [Property in keyof Table as PropertyKey<Property>]: Optional };

const propertyRows: readonly (readonly [string, PropertyRow])[] = Object.entries(materialTable);

/** One optional key for each property of a material. */
export function materialShape(): MaterialShape {
  const shape = propertyRows.map(([property, row]) => [
    row.key ?? property,
    optional(quantityOf(row.dimension, row), row.meaning, row.example),
  ]);
  return Object.fromEntries(shape) as MaterialShape;
}

function quantityOf(
  dimension: Dimension,
  {
    isRatio,
    example = dimensionFacts(dimension).example,
    ...bounds
  }: Bounds & Pick<WindowKeyRow, "isRatio" | "example">,
): Leaf<number> {
  if (isRatio === true) return ratio({ ...bounds, example });
  return dimension === "mass" ? mass(bounds) : quantity(dimension, bounds);
}
