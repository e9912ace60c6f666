// Which keys of a scenario would give the masses that it does without.
import type { StationSpec } from "#scenario/scenario.ts";

/** Several products stand by name; the only one is called so itself. */
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
