// From what could be read to a scenario with nothing left to interpret, with all the checks that look across keys.
import { resolveCosts, resolveOptions } from "./resolveCosts.ts";
import type { Finding, Path } from "#scenario/values/finding.ts";
import type { Distribution } from "#engine/distributions/distribution.ts";
import { checkKind } from "./checkKind.ts";
import { checkMasses } from "./checkMasses.ts";
import { checkTimes } from "./checkTimes.ts";
import { checkParisons } from "./checkParisons.ts";
import { defaults, dieZoneAssumed } from "#scenario/values/defaults.ts";
import { checkEither, checkGiven } from "./resolveDelivery.ts";
import { resolveProducts } from "./resolveProducts.ts";
import { checkDemold, resolveQuality } from "./resolveQuality.ts";
import { clockOf, lengthOfRun, resolveCalendar } from "./resolveCalendar.ts";
import { resolveTakeaway } from "./resolveTakeaway.ts";
import { resolveStops } from "./resolveStops.ts";
import { checkZeroCycle, isComplete, resolveStation } from "./resolveStations.ts";
import { settled, type Resolution, type ScenarioDraft } from "./resolution.ts";
import type { DeliverySpec, RunSpec, Scenario, StationSpec, ValveSpec } from "#scenario/scenario.ts";
import { listStations, type ListedStation } from "./stationList.ts";
import { stationOrder } from "./stationOrder.ts";
import { orderSpecs } from "#scenario/order/orderSpecs.ts";
import { valueAt } from "#scenario/reading/pathPattern.ts";

export interface Resolved {
  /** Absent where a part of it could not be read; present beside findings that may still refuse it. */
  readonly scenario?: Scenario;
  readonly findings: readonly Finding[];
}

export function resolveScenario(draft: ScenarioDraft, content: unknown, name: string): Resolved {
  const findings: Finding[] = [];
  const given: Resolution = {
    draft,
    has: (path: Path) => valueAt(content, path) !== undefined,
    report: (finding) => findings.push(finding),
  };
  const length = lengthOfRun(given);
  const { length: _, ...run } = draft.run ?? {};
  const resolution = { ...given, draft: { ...draft, run: { ...run, ...(length === undefined ? {} : { length }) } } };
  checkFormat(resolution);
  const products = resolveProducts(resolution);
  const listed = listStations(resolution);
  const order = stationOrder(
    listed.map((station) => station.name),
    resolution,
  );
  const resolved = listed.map((station) => resolveStation(station, products, resolution));
  const valve = resolveValve(resolution);
  checkMasses(products, listed, resolution);
  checkKind(listed, resolution);
  checkDelivery(listed, resolution);
  if (valve !== undefined && draft.delivery?.kind !== "continuous") checkZeroCycle(resolved, listed, valve, resolution);
  checkParisons(resolved, resolution);
  adviseOn(resolved, resolution);
  checkTimes(resolved, listed, resolution);
  checkDemold(resolved, resolution);
  const judged = resolveQuality(products, listed, resolution);
  const stations = resolved.filter((station) => station !== undefined);
  const servers = resolveTakeaway(listed, resolution);
  const parts = {
    name,
    title: draft.title ?? name,
    valve,
    run: resolveRun(resolution),
    delivery: resolveDelivery(resolution),
    stations: stations.length === listed.length ? inOrder(stations, order) : undefined,
    operators: draft.crew?.operators,
    stops: resolveStops(listed, servers, resolution),
    downstream: servers,
    planned: resolveCalendar(listed, resolution),
    ordered: orderSpecs(draft.orders, { products: [...products.keys()], clock: clockOf(draft), report: given.report }),
  };
  const options = resolveOptions(resolution);
  if (!isComplete(parts)) return { findings };
  const { stops, downstream, planned, ordered, ...always } = parts;
  const costs = resolveCosts(draft.costs);
  const others = {
    ...(stops.length === 0 ? {} : { stops }),
    ...(costs ? { costs } : {}),
    ...options,
    ...measuredOf(draft),
  };
  return { scenario: { ...always, ...others, ...judged, ...downstream, ...planned, ...ordered }, findings };
}

function measuredOf({ measured = {} }: ScenarioDraft): Pick<Scenario, "measured"> {
  const given = Object.entries(measured).filter(([, value]) => value !== undefined);
  return given.length === 0 ? {} : { measured: Object.fromEntries(given) };
}

function inOrder(stations: readonly StationSpec[], order: readonly string[]): readonly StationSpec[] {
  return stations.toSorted((one, other) => order.indexOf(one.name) - order.indexOf(other.name));
}

function checkFormat({ has, report }: Resolution): void {
  if (has(["format"])) return;
  const remedy = "Add `format: 1` so that later versions know what they read.";
  report({
    code: "format-missing",
    message: "`format` is missing; 1 is assumed.",
    expected: "`format: 1`",
    remedy,
    path: ["format"],
    severity: "hint",
  });
}

function checkDelivery(listed: readonly ListedStation[], resolution: Resolution): void {
  const { draft, has, report } = resolution;
  const own = listed.filter((station) => station.first).map((station) => [...station.path, "delivery"]);
  for (const path of [["delivery"], ...own]) checkEither(path, resolution);
  checkGiven(own, resolution);
  if (!has(["valve"]) && draft.delivery?.kind !== "continuous") {
    const expected = "`valve: { shift: 0.3 s }`";
    report({
      code: "missing",
      message: "`valve` is missing.",
      expected,
      remedy: `Add ${expected}; \`shift: 0 s\` if there is none.`,
      path: ["valve"],
    });
  }
  const dispatch = draft.valve?.dispatch;
  if (draft.delivery?.shotFor === "next" && dispatch !== undefined && dispatch !== "alternate") {
    const message = "The screw cannot know the next station: the dispatch rule does not fix one.";
    report({
      code: "next-unknown",
      message,
      expected: "`valve.dispatch: alternate`",
      remedy: "Write `dispatch: alternate`, or `shotFor: served`.",
      path: ["delivery", "shotFor"],
    });
  }
}

function resolveDelivery({ draft }: Resolution): DeliverySpec | undefined {
  const { kind, rechargeStarts, shotFor, shotCapacity, accumulator } = draft.delivery ?? {};
  const capacity = shotCapacity === undefined ? {} : { shotCapacity: shotCapacity / 1_000_000 };
  if (kind === "accumulator-head") return { kind, accumulator: accumulator ?? "per-station", ...capacity };
  if (kind === "continuous") return continuousOf(draft.delivery!);
  if (kind === undefined || rechargeStarts === undefined || shotFor === undefined) return undefined;
  return { kind, rechargeStarts, shotFor, ...capacity };
}

function continuousOf({
  rate = "matched",
  removal = "mold",
  dieZone = dieZoneAssumed.value,
  rateRange,
  stopsScrewAfter: after,
}: NonNullable<ScenarioDraft["delivery"]>): DeliverySpec {
  const slowest = rateRange?.min === undefined ? {} : { slowestRate: rateRange.min };
  const stops = after === undefined || after === "never" ? {} : { stopsScrewAfter: after };
  return { kind: "continuous", rate, removal, dieZone, ...slowest, ...stops };
}

/** Continuous extrusion has no valve. */
const noShift: Distribution = { kind: "fixed", value: 0 };

function resolveValve({ draft }: Resolution): ValveSpec | undefined {
  if (draft.delivery?.kind === "continuous") {
    return { shift: noShift, dispatch: draft.valve?.dispatch ?? defaults["valve.dispatch"].value };
  }
  const valve = { shift: settled(draft.valve?.shift), dispatch: draft.valve?.dispatch };
  return isComplete(valve) ? valve : undefined;
}

function resolveRun({ draft, report }: Resolution): RunSpec | undefined {
  const { length, replications, seed, warmup, start, precision } = draft.run ?? {};
  if (length !== undefined && typeof warmup === "number" && warmup >= length) {
    const message = "The warm-up takes the whole run, so nothing is left to count.";
    report({
      code: "warmup-too-long",
      message,
      expected: "a warm-up shorter than `run.length`",
      remedy: "Make the run longer or the warm-up shorter.",
      path: ["run", "warmup"],
    });
  }
  // With a calendar or planned changes the start is part of the question, so there is no warm-up.
  const isPlanned = draft.calendar !== undefined || draft.changes?.some((change) => change?.to === undefined) === true;
  const run = { length, replications, seed, warmup: isPlanned && warmup === "auto" ? 0 : warmup, start };
  return isComplete(run) ? { ...run, ...(precision === undefined ? {} : { precision }) } : undefined;
}

/** Warnings for values that are valid but probably mistakes. */
function adviseOn(stations: readonly (StationSpec | undefined)[], { draft, has, report }: Resolution): void {
  const ranked = stations.some((station) => station !== undefined && station.priority !== 1);
  if (ranked && draft.valve?.dispatch !== undefined && draft.valve.dispatch !== "priority") {
    const message = "Stations have a priority, but the dispatch rule does not look at it.";
    report({
      code: "priority-unused",
      message,
      remedy: "Write `dispatch: priority`, or delete the priorities.",
      path: ["valve", "dispatch"],
      severity: "hint",
    });
  }
  const byRate = stations.some((station) => station?.recharge.by === "rate" || station?.drop.by === "rate");
  if (byRate && has(["product"]) && !has(["product", "flash"])) {
    const message =
      "`flash` is missing; none is assumed, so that shots, recharge and drop come out too small if there is any.";
    report({
      code: "flash-assumed",
      message,
      expected: "`flash: 30 % of part`",
      remedy: "Add `flash`, or `flash: 0 g` if there is none.",
      path: ["product", "flash"],
      severity: "hint",
    });
  }
}
