// From drafts of product, station and delivery to what the process window is worked out from.
import { lawMean } from "#engine/distributions/law.ts";
import { celsius, type Possible } from "./resolveMaterial.ts";
import type { ProductMasses, ResolvedProduct } from "./resolveProducts.ts";
import { settled, type ProductDraft, type Resolution, type StationDraft } from "./resolution.ts";
import type { ProcessSpec, ProcessValues } from "#scenario/scenario.ts";

const milligramsPerKilogram = 1_000_000;

/** Undefined where no material is named, or none that is known. */
export function resolveProcess(
  product: ProductDraft | undefined,
  { material, masses }: ResolvedProduct,
  station: StationDraft,
  resolution: Resolution,
): ProcessSpec | undefined {
  if (!material) return undefined;
  return {
    material,
    values: given({ ...productValues(product, masses), ...machineValues(station, resolution) }),
    deliveryKind: resolution.draft.delivery?.kind ?? "reciprocating-screw",
    ...(product?.coolingTo === "mean" ? { coolingTo: "mean" } : {}),
  };
}

/** Without the keys that were not given. */
function given(values: Possible<ProcessValues>): ProcessValues {
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined));
}

function productValues(product: ProductDraft | undefined, masses: ProductMasses | undefined): Possible<ProcessValues> {
  const { wall, die } = product ?? {};
  return {
    "product.partMass": masses && masses.partMilligrams / milligramsPerKilogram,
    "product.flash": masses && masses.flashMilligrams / milligramsPerKilogram,
    "product.wall.mean": wall?.mean,
    "product.wall.thickest": wall?.thickest,
    "product.volume": product?.volume,
    "product.projectedArea": product?.projectedArea,
    "product.length": product?.length,
    "product.diameter": product?.diameter,
    "product.parisonLength": product?.parisonLength,
    "product.pinchLength": product?.pinchLength,
    "product.pinchLoad": product?.pinchLoad,
    "product.die.diameter": die?.diameter,
    "product.die.mandrel": die?.mandrel ?? (die?.diameter && die.gap && die.diameter - 2 * die.gap),
    "product.thicknessSwell": product?.thicknessSwell,
    "product.sagLimit": product?.sagLimit,
    "product.meltTemperature": celsius(product?.meltTemperature),
    "product.moldTemperature": celsius(product?.moldTemperature),
    "product.demoldTemperature": celsius(product?.demoldTemperature),
    "product.insideAir.transfer": product?.insideAir?.transfer,
    "product.insideAir.temperature": celsius(product?.insideAir?.temperature),
    "product.blowPressure": product?.blowPressure,
    "product.ventTo": product?.ventTo,
    "product.airConductance": product?.airConductance,
    "product.airCriticalRatio": product?.airCriticalRatio,
    "product.airSupply": product?.airSupply,
  };
}

function machineValues(station: StationDraft, { draft }: Resolution): Possible<ProcessValues> {
  const cell = draft.delivery;
  const rate = settled(station.delivery?.plasticatingRate ?? cell?.plasticatingRate);
  return {
    "station.cavities": station.cavities,
    "station.moldContact": station.moldContact,
    "station.clampForce": station.clampForce,
    "delivery.plasticatingRate": rate && lawMean(rate),
    "delivery.shotCapacity": cell?.shotCapacity && cell.shotCapacity / milligramsPerKilogram,
    "delivery.screwDiameter": cell?.screwDiameter,
    "delivery.drivePower": cell?.drivePower,
    "delivery.holdUp": cell?.holdUp && cell.holdUp / milligramsPerKilogram,
    "delivery.meltRise.from": cell?.meltRise?.from,
    "delivery.meltRise.rise": cell?.meltRise?.rise,
    "delivery.meltRise.per": cell?.meltRise?.per,
    "delivery.screw.channelDepth": cell?.screw?.channelDepth,
    "delivery.screw.helixAngle": cell?.screw?.helixAngle,
    "delivery.screw.meteringLength": cell?.screw?.meteringLength,
    "delivery.screw.speed": cell?.screw?.speed,
    "delivery.screw.backPressure": cell?.screw?.backPressure,
    "delivery.screw.viscosity": cell?.screw?.viscosity,
  };
}
