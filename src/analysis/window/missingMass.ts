// The keys of the masses that a scenario does not give.
import type { StationSpec } from "#scenario/scenario.ts";

/** Several products have names; a single product is named `product`. */
export function productHome({ product }: Pick<StationSpec, "product">): string {
  return product === "product" ? "product" : `products.${product}`;
}

/** Paths of the masses that are not given, each once; none where every part is weighed. */
export function missingMass(
  stations: readonly Pick<StationSpec, "product" | "partMass">[],
): readonly `${string}.partMass`[] {
  const lacking = stations.filter(({ partMass }) => partMass === undefined);
  return [...new Set(lacking.map((station) => `${productHome(station)}.partMass` as const))];
}
