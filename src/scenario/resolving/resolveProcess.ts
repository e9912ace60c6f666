// From drafts of product, station and delivery to the numbers of the process window that a scenario gives.
import { distributionMean } from "#engine/distributions/moments.ts";
import type { WindowKeyRow } from "#physics/window/windowKeyRow.ts";
import { windowKeys, type StationKey } from "#physics/window/windowKeys.ts";
import { valueAt } from "#scenario/reading/pathPattern.ts";
import type { ProcessSpec } from "#scenario/scenario.ts";
import type { ResolvedProduct } from "./resolveProducts.ts";
import { settled, type ProductDraft, type Resolution, type StationDraft } from "./resolution.ts";
import { windowNumber } from "./windowNumber.ts";

/** Undefined where no material is named, or none that is known. */
export function resolveProcess(
  product: ProductDraft | undefined,
  { material, masses }: ResolvedProduct,
  station: StationDraft,
  { draft }: Resolution,
): ProcessSpec | undefined {
  if (!material) return undefined;
  const rate = settled(station.delivery?.plasticatingRate ?? draft.delivery?.plasticatingRate);
  const ofStation: Readonly<Record<StationKey, number | undefined>> = {
    "product.flash": windowNumber(masses?.flashMilligrams, "mass"),
    "station.cavities": station.cavities,
    "delivery.plasticatingRate": rate && distributionMean(rate),
  };
  return {
    material,
    values: { ...quantities({ product, station, delivery: draft.delivery }), ...given(Object.entries(ofStation)) },
    deliveryKind: draft.delivery?.kind ?? "reciprocating-screw",
    ...(product?.coolingTo === "mean" ? { coolingTo: "mean" } : {}),
  };
}

const rows: readonly (readonly [string, WindowKeyRow])[] = Object.entries(windowKeys);

/** The plain quantities of the key table, each at its path. */
function quantities(drafts: Readonly<Record<"product" | "station" | "delivery", unknown>>): ProcessSpec["values"] {
  const plain = rows.filter(([, { from }]) => from === undefined);
  return given(plain.map(([path, { dimension }]) => [path, windowNumber(valueAt(drafts, path.split(".")), dimension)]));
}

function given(values: readonly (readonly [string, number | undefined])[]): ProcessSpec["values"] {
  return Object.fromEntries(values.filter(([, value]) => value !== undefined));
}
