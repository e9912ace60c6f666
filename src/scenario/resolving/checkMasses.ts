// Reports a mass that is not given though something needs it: a cell timed with a stopwatch alone needs none.
import type { Path } from "#scenario/values/finding.ts";
import { isByRate } from "./resolveDelivery.ts";
import { productOf, type Products } from "./resolveProducts.ts";
import type { Resolution } from "./resolution.ts";
import type { ListedStation } from "./stationList.ts";

/** `keys` are those that need the mass, by product. */
export function checkMasses(products: Products, listed: readonly ListedStation[], resolution: Resolution): void {
  const { has, report } = resolution;
  const quiet: Resolution = { ...resolution, report: () => undefined };
  const keysOf = new Map<string, Set<string>>();
  for (const station of listed) {
    const product = productOf(station.draft, station.path, products, quiet);
    if (product === undefined || products.get(product)?.masses !== undefined) continue;
    const keys = [...keysOfStation(station, resolution), ...keysOfCell(resolution)];
    keysOf.set(product, new Set([...(keysOf.get(product) ?? []), ...keys]));
  }
  for (const [product, keys] of keysOf) {
    const home = products.has(product) ? homeOf(product, resolution) : undefined;
    const path = home === undefined ? ["product"] : [...home, "partMass"];
    // A value that cannot be read is already reported.
    if (keys.size === 0 || has(path)) continue;
    const expected = home === undefined ? "`product: { partMass: 42 g, flash: 30 % of part }`" : "`partMass: 42 g`";
    report({
      code: "missing",
      message: `\`${path.at(-1)}\` is missing. These keys need the mass of a shot: ${namesOf([...keys])}.`,
      expected,
      remedy: `Add ${expected}, or ${insteadOf([...keys])}.`,
      path,
    });
  }
}

const measured: Readonly<Record<string, string>> = {
  plasticatingRate: "`recharge: 3.9 s`",
  deliveryRate: "`drop: 1.2 s`",
};

function insteadOf(keys: readonly string[]): string {
  const times = keys.flatMap((key) => measured[key] ?? []);
  return times.length === keys.length ? `give measured times: ${times.join(", ")}` : "remove the keys that need it";
}

function namesOf(keys: readonly string[]): string {
  return keys.map((key) => `\`${key}\``).join(", ");
}

function homeOf(product: string, { has }: Resolution): Path {
  return has(["products", product]) ? ["products", product] : ["product"];
}

function keysOfStation({ draft }: ListedStation, { draft: { delivery: cell } }: Resolution): readonly string[] {
  const rates = [
    ["plasticatingRate", "recharge"],
    ["deliveryRate", "drop"],
  ] as const;
  return rates.filter(([rate, time]) => isByRate(rate, time, draft.delivery, cell)).map(([rate]) => rate);
}

function keysOfCell({ draft }: Resolution): readonly string[] {
  const { delivery, quality, startUp, changes } = draft;
  const needs: readonly (readonly [string, boolean])[] = [
    ["accumulator: common", delivery?.accumulator === "common"],
    ["rateRange", delivery?.rateRange !== undefined],
    ["quality.lightest", quality?.lightest !== undefined],
    ["quality.heaviest", quality?.heaviest !== undefined],
    ["startUp.purge", (startUp?.purge ?? 0) > 0],
    ["residue", changes?.some((change) => change?.residue !== undefined) === true],
  ];
  return needs.filter(([, isGiven]) => isGiven).map(([key]) => key);
}
