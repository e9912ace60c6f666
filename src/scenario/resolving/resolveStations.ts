// From station drafts to stations with everything filled in, with the checks that look across a station's keys.
import { checkExtra, extraSteps } from "./extraSteps.ts";
import { timeOrRate } from "./resolveDelivery.ts";
import { resolveProcess } from "./resolveProcess.ts";
import { productOf, type Products, type ResolvedProduct } from "./resolveProducts.ts";
import { isAlwaysZero, removeKeys, settled, type Resolution, type StationDraft } from "./resolution.ts";
import { formatQuantity } from "#foundation/formatQuantity.ts";
import type { Distribution } from "#engine/distributions/distribution.ts";
import { distributionMean } from "#engine/distributions/moments.ts";
import type { Path } from "#scenario/values/finding.ts";
import type { StationSpec, TimeOrRate, ValveSpec } from "#scenario/scenario.ts";
import type { ListedStation } from "./stationList.ts";

/** A station with all its keys; undefined where one of them could not be read. */
export function resolveStation(
  listed: ListedStation,
  products: Products,
  resolution: Resolution,
): StationSpec | undefined {
  const { draft, path, first } = listed;
  // The twins that `count` makes share their faults.
  const quiet: Resolution = first ? resolution : { ...resolution, report: () => undefined };
  const product = productOf(draft, path, products, quiet);
  const known = (product === undefined ? undefined : products.get(product)) ?? {};
  checkShot(draft, path, known, quiet);
  checkVent(draft, path, quiet);
  checkOperator(draft, path, quiet);
  checkExtra(draft, path, quiet);
  checkRam(listed, known, quiet);
  const spec = assemble(listed, product, known, resolution);
  if (spec === undefined || product === undefined) return spec;
  const made = resolution.draft.products?.[product] ?? resolution.draft.product;
  const process = resolveProcess(made, known, draft, quiet);
  return process === undefined ? spec : { ...spec, process };
}

function assemble(
  { name, draft, path }: ListedStation,
  product: string | undefined,
  { masses }: ResolvedProduct,
  resolution: Resolution,
): StationSpec | undefined {
  const cell = resolution.draft.delivery;
  const { steps, cavities, priority } = draft;
  const isContinuous = cell?.kind === "continuous";
  const travel = travelOf(draft);
  if (isContinuous && travel === undefined) return undefined;
  const spec = {
    name,
    cavities,
    product,
    priority,
    drop: isContinuous ? noDrop : timeOrRate("deliveryRate", "drop", draft.delivery, cell),
    recharge: timeOrRate("plasticatingRate", "recharge", draft.delivery, cell),
    close: settled(steps?.close),
    blow: settledOrOpen(steps?.blow),
    cool: settledOrOpen(steps?.cool),
    vent: settledOrOpen(steps?.vent),
    open: settled(steps?.open),
    remove: removal(draft),
    extra: extraSteps(draft),
  };
  const open = (["blow", "cool", "vent"] as const).filter((step) => steps?.[step] === "estimate");
  const clear = clearing(draft);
  const own = {
    ...(masses ? { partMass: masses.partMilligrams / 1e6, flashMass: masses.flashMilligrams / 1e6 } : {}),
    ...(clear === undefined ? {} : { clear }),
    ...(isContinuous && travel ? { travel } : {}),
  };
  return isComplete(spec)
    ? { ...spec, ...own, ...(open.length === 0 ? {} : { estimates: { steps: open, path } }) }
    : undefined;
}

/** A time to estimate is 0 until it is computed. */
function settledOrOpen(distribution: Parameters<typeof settled>[0]): Distribution | undefined {
  return distribution === "estimate" ? { kind: "fixed", value: 0 } : settled(distribution);
}

/** A record without undefined values. */
type Complete<Parts> = { readonly [Key in keyof Parts]: Exclude<Parts[Key], undefined> };

export function isComplete<Parts extends object>(parts: Parts): parts is Parts & Complete<Parts> {
  return Object.values(parts).every((part) => part !== undefined);
}

function removal(draft: StationDraft): StationSpec["remove"] | undefined {
  const { time: written, by } = removeKeys(draft);
  const time = settled(written);
  return time === undefined || by === undefined ? undefined : { time, by };
}

/** Continuous extrusion has no drop. */
const noDrop: TimeOrRate = { by: "time", time: { kind: "fixed", value: 0 } };

function travelOf({ steps }: StationDraft): StationSpec["travel"] {
  const travel = { in: settled(steps?.travelIn), cut: settled(steps?.cut), out: settled(steps?.travelOut) };
  return isComplete(travel) ? travel : undefined;
}

function clearing({ steps }: StationDraft): StationSpec["clear"] {
  const time = settled(steps?.clear?.time);
  const by = steps?.clear?.by;
  return time === undefined || by === undefined ? undefined : { time, by };
}

function checkShot(
  draft: StationDraft,
  path: Path,
  { masses }: ResolvedProduct,
  { draft: cell, report }: Resolution,
): void {
  const capacity = cell.delivery?.shotCapacity;
  if (capacity === undefined || masses === undefined || draft.cavities === undefined) return;
  const each = masses.partMilligrams + masses.flashMilligrams;
  const shot = draft.cavities * each;
  if (shot <= capacity) return;
  const fitting = Math.floor(capacity / each);
  const holder = cell.delivery?.kind === "accumulator-head" ? "an accumulator" : "a screw";
  const fewer = fitting === 0 ? "" : `, or at most ${fitting} ${fitting === 1 ? "cavity" : "cavities"}`;
  report({
    code: "shot-above-capacity",
    message: `The shot of ${draft.cavities} × ${each / 1000} g = ${shot / 1000} g is above the shot capacity of ${capacity / 1000} g.`,
    expected: `a shot of at most ${capacity / 1000} g`,
    remedy: `Use ${holder} that holds \`${shot / 1000} g\`${fewer}.`,
    path: [...path, "cavities"],
    fate: "cell",
  });
}

/** A common accumulator fills while it delivers, so the screw must be slower than the ram. */
function checkRam({ draft, path }: ListedStation, { masses }: ResolvedProduct, resolution: Resolution): void {
  const { draft: cell, report } = resolution;
  const { kind, accumulator } = cell.delivery ?? {};
  if (kind !== "accumulator-head" || accumulator !== "common" || masses === undefined) return;
  const shot = (draft.cavities ?? 0) * (masses.partMilligrams + masses.flashMilligrams);
  const [fill, drop] = [
    meanSeconds(timeOrRate("plasticatingRate", "recharge", draft.delivery, cell.delivery), shot),
    meanSeconds(timeOrRate("deliveryRate", "drop", draft.delivery, cell.delivery), shot),
  ];
  if (fill === undefined || drop === undefined || fill >= drop) return;
  const text = (seconds: number): string => formatQuantity(seconds, "time", { digits: 3 });
  report({
    code: "values-contradict",
    message: `The screw fills a shot in ${text(fill)}, faster than the ram delivers it in ${text(drop)}.`,
    expected: "a plasticating rate at or below the delivery rate",
    remedy: "Check both for a slip.",
    path: [...path, "cavities"],
  });
}

function meanSeconds(step: TimeOrRate | undefined, milligrams: number): number | undefined {
  if (step === undefined) return undefined;
  return step.by === "time" ? distributionMean(step.time) : milligrams / 1_000_000 / distributionMean(step.rate);
}

function checkVent({ steps }: StationDraft, path: Path, { report }: Resolution): void {
  const [blow, vent] = [settled(steps?.blow), settled(steps?.vent)];
  // An estimated blow takes some time, whatever it will be.
  const isBlown = steps?.blow === "estimate" || (blow !== undefined && !isAlwaysZero(blow));
  if (!isBlown || vent === undefined || !isAlwaysZero(vent)) return;
  report({
    code: "vent-zero",
    message: "The mold would open under blow pressure: the vent takes no time.",
    expected: "a vent time above zero after a blow",
    remedy: "Give the time until the pressure has fallen, such as `0.5 s`.",
    path: [...path, "steps", "vent"],
    fate: "cell",
  });
}

function checkOperator(station: StationDraft, path: Path, { draft, report }: Resolution): void {
  if (removeKeys(station).by !== "operator" || draft.crew?.operators !== 0) return;
  report({
    code: "operator-missing",
    message: "An operator is to take the parts out, but there is none.",
    expected: "`crew: { operators: 1 }` or more",
    remedy: "Add `crew: { operators: 1 }`, or write `by: machine`.",
    path: [...path, "steps", "remove", "by"],
    fate: "cell",
  });
}

/** Reports a cell that could turn for ever without the clock moving on. */
export function checkZeroCycle(
  stations: readonly (StationSpec | undefined)[],
  listed: readonly ListedStation[],
  valve: ValveSpec,
  { report }: Resolution,
): void {
  const isZero = (step: TimeOrRate): boolean => step.by === "time" && isAlwaysZero(step.time);
  if (!isAlwaysZero(valve.shift)) return;
  for (const [index, station] of stations.entries()) {
    if (station === undefined || station.estimates !== undefined || !isZero(station.drop) || !isZero(station.recharge))
      continue;
    const steps = [station.close, station.blow, station.cool, station.vent, station.open, station.remove.time];
    if (![...steps, ...station.extra.map((step) => step.time)].every(isAlwaysZero)) continue;
    if (listed[index]?.first !== true) continue;
    const message = "Nothing in this station's cycle takes any time.";
    report({
      code: "zero-cycle",
      message,
      expected: "at least one time above zero",
      remedy: "Give the times of its steps.",
      path: [...(listed[index]?.path ?? []), "steps"],
      fate: "cell",
    });
  }
}
