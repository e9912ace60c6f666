// The process window of each station from the given values, the mean step times and the ideal cycle or a run.
import { inReadingOrder } from "#foundation/inReadingOrder.ts";
import { processWindow, missingRows, type MissingRow } from "#physics/window/processWindow.ts";
import type { WindowInput } from "#physics/window/windowInput.ts";
import type { CycleKey, WindowKey } from "#physics/window/windowKeys.ts";
import type { WindowRow } from "#physics/window/windowRule.ts";
import { slowedBy } from "#cell/delivery/continuousExtrusion.ts";
import type { StepRole } from "#cell/words/stepNames.ts";
import type { Scenario, StationSpec } from "#scenario/scenario.ts";
import type { IdealCycle } from "#analysis/ideal/idealCycle.ts";
import { ownStepsAfter } from "#cell/table/ownStepsAfter.ts";
import { meltByStation } from "./meltByStation.ts";
import { stepTimes } from "#analysis/ideal/stepTimes.ts";

export interface StationWindow {
  /** Stations whose window is the same, in the order of their numbers. */
  readonly stations: readonly string[];
  readonly rows: readonly WindowRow[];
  /** Rows left out, with the keys that would give them. */
  readonly missing: readonly MissingRow[];
  /** The heat of the melt is known, but not how the mold temperature follows it. */
  readonly hasConstantMold: boolean;
}

/**
 * Empty where no material is given. Step times are means. `throughput` is the melt through the screw in kg/s, waits included: of a
 * run, or without a run of the ideal cycle. `rejects` is the reject share of a run; absent without a cause of rejects.
 */
export function stationWindows(
  scenario: Scenario,
  ideal: IdealCycle,
  throughput?: number,
  rejects?: number,
): readonly StationWindow[] {
  return stationInputs(scenario, ideal, throughput, rejects).map(({ stations, input }) => ({
    stations,
    rows: processWindow(input),
    missing: missingRows(input).map((row) => ({ ...row, keys: row.keys.map(givenKey) })),
    hasConstantMold: input["station.throughput"] !== undefined && input["station.moldResistance"] === undefined,
  }));
}

interface StationInput {
  /** Stations whose input is the same, in the order of their numbers. */
  readonly stations: readonly string[];
  readonly input: WindowInput;
}

/** What the window of each station is computed from, with the arguments of `stationWindows`. */
export function stationInputs(
  scenario: Scenario,
  ideal: IdealCycle,
  throughput?: number,
  rejects?: number,
): readonly StationInput[] {
  const melt = meltByStation(scenario, ideal);
  const total = throughput ?? melt?.total;
  const inputs = new Map<string, { stations: string[]; input: WindowInput }>();
  for (const station of scenario.stations) {
    const share = melt?.shares.get(station.name);
    const own = total === undefined || share === undefined ? undefined : total * share;
    const input = inputOf(scenario, station, { throughput: total, own, rejects });
    if (!input) continue;
    const key = JSON.stringify(input);
    const known = inputs.get(key) ?? { stations: [], input };
    known.stations.push(station.name);
    inputs.set(key, known);
  }
  return [...inputs.values()].map(({ stations, input }) => ({
    stations: inReadingOrder(stations, (name) => name),
    input,
  }));
}

/** The melt through screw and mold has no key; it follows from the part mass. */
function givenKey(key: WindowKey): WindowKey {
  return key === "delivery.throughput" || key === "station.throughput" ? "product.partMass" : key;
}

/** The rows outside their limits. */
export function outsideWindow(
  windows: readonly StationWindow[],
): readonly (WindowRow & Pick<StationWindow, "stations">)[] {
  return windows.flatMap(({ stations, rows }) =>
    rows.filter(({ verdict }) => verdict === "below" || verdict === "above").map((row) => ({ ...row, stations })),
  );
}

/** Inputs of the window that a cycle or a run gives, besides its step times. */
interface Figures {
  readonly throughput: number | undefined;
  /** Through this station, kg/s. */
  readonly own?: number | undefined;
  readonly matchedRate?: number | undefined;
  readonly rejects?: number | undefined;
  /** Mean seconds of the mold's own steps. */
  readonly cycle?: number | undefined;
}

function inputOf(scenario: Scenario, station: StationSpec, figures: Figures): WindowInput | undefined {
  const own = stepTimes(scenario).filter((time) => time.resource === station.name || time.station === station.name);
  const mean: MeanSeconds = (role, name) =>
    own.find((time) => time.role === role && time.step === (name ?? time.step))?.seconds ?? 0;
  const cycle = own.filter(({ resource }) => resource === station.name).reduce((sum, { seconds }) => sum + seconds, 0);
  if (scenario.delivery.kind !== "continuous") return stepInput(station, mean, { ...figures, cycle });
  // Under continuous extrusion a parison hangs while it grows.
  const parisonMean: MeanSeconds = (role, name) => mean(role === "mold.drop" ? "screw.extrude" : role, name);
  const full = station.process?.values["delivery.plasticatingRate"];
  const matchedRate = full && full / slowedBy(scenario);
  return stepInput(station, parisonMean, { ...figures, cycle, matchedRate });
}

/** Mean time of a step of the station's cycle; `name` selects an extra step. */
type MeanSeconds = (role: StepRole, name?: string) => number;

/** The input of the window with the mean time of each step; undefined where no material is given. */
export function stepInput(
  { process, extra, remove }: Pick<StationSpec, "process" | "extra" | "remove">,
  mean: MeanSeconds,
  { throughput, own: ownMelt, matchedRate, rejects, cycle: seconds }: Figures,
): WindowInput | undefined {
  if (!process) return undefined;
  const own = (...after: Parameters<typeof ownStepsAfter>[1]): number =>
    ownStepsAfter(extra, after).reduce((sum, { name }) => sum + mean("mold.own", name), 0);
  const cycle: Readonly<Record<CycleKey, number | undefined>> = {
    "station.steps.drop": mean("mold.drop"),
    // The parison hangs from the drop until the mold has closed.
    "station.hang": own("mold.drop") + mean("mold.close"),
    "station.steps.close": mean("mold.close"),
    "station.steps.blow": mean("mold.blow"),
    // The wall lies against the mold until the vent.
    "station.steps.cool": own("mold.blow") + mean("mold.cool") + own("mold.cool"),
    "station.steps.vent": mean("mold.vent"),
    "station.steps.open": mean("mold.open"),
    "station.steps.remove": mean("mold.remove"),
    "station.cycle": seconds,
    "station.throughput": ownMelt,
    "station.rejects": rejects,
    "delivery.matchedRate": matchedRate,
    "delivery.throughput": throughput,
  };
  const { values, ...choices } = process;
  return { ...choices, removedBy: remove.by, ...values, ...cycle };
}
