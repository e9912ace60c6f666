// The input of the process window: the numbers of the key table, the material, and a few choices.
import type { Material } from "#physics/materials/material.ts";
import { enthalpyChange, type Phases } from "#physics/cooling/enthalpyChange.ts";
import { loadedMold } from "#physics/cooling/loadedMold.ts";
import { meltRise } from "#physics/screw/meltRise.ts";
import type { Substitute, WindowKeyRow } from "./windowKeyRow.ts";
import { windowKeys, type AlwaysKnown, type WindowKey } from "./windowKeys.ts";

type WindowNumbers = Readonly<Record<WindowKey, number>>;

/** The keys of the rise of the melt temperature with the rate. */
export const riseKeys = ["delivery.meltRise.from", "delivery.meltRise.rise", "delivery.meltRise.per"] as const;

/** The steps whose time the window can estimate. */
export type EstimatedTime = "blow" | "cool" | "vent";

/** The temperature of the wall that must fall to the demold temperature: of its hottest point, or its mean. */
export type CoolingCriterion = "hottest point" | "mean";

export type DeliveryKind = "reciprocating-screw" | "accumulator-head" | "continuous";

interface WindowChoices {
  readonly material: Material;
  /** The hottest point where absent. */
  readonly coolingTo?: CoolingCriterion;
  /** A reciprocating screw where absent. */
  readonly deliveryKind?: DeliveryKind;
  /** By a machine where absent. */
  readonly removedBy?: "machine" | "operator";
  /** Keys that are not given and have a substitute. */
  readonly assumed?: readonly WindowKey[];
}

export type WindowInput = WindowChoices & { readonly [Key in WindowKey]?: number | undefined };

/** An input with a substitute for each number that is not given, where its row has a substitute. */
export type CompleteInput = WindowInput & Pick<WindowNumbers, AlwaysKnown>;

/** An input with values for these keys. */
export type Known<Key extends WindowKey> = CompleteInput & Pick<WindowNumbers, Key>;

export function knows<Key extends WindowKey>(input: CompleteInput, keys: readonly Key[]): input is Known<Key> {
  return keys.every((key) => input[key] !== undefined);
}

const table: Readonly<Record<WindowKey, WindowKeyRow<WindowKey>>> = windowKeys;
const rows = Object.entries(table) as readonly (readonly [WindowKey, WindowKeyRow<WindowKey>])[];

export function completeInput(input: WindowInput): CompleteInput {
  const replaced = rows.flatMap(([key, { otherwise }]) =>
    otherwise === undefined || input[key] !== undefined ? [] : [[key, substituteOf(otherwise, input)] as const],
  );
  return { ...input, ...Object.fromEntries(replaced), assumed: replaced.map(([key]) => key) } as CompleteInput;
}

function substituteOf(otherwise: Substitute<WindowKey>, input: WindowInput): number | undefined {
  if ("value" in otherwise) return otherwise.value;
  if ("material" in otherwise) return input.material[otherwise.material].value;
  const values = otherwise.keys.map((key) => input[key]);
  return values.every((value) => value !== undefined) ? otherwise.formula(...values) : undefined;
}

export function phasesOf({ material }: Pick<WindowInput, "material">): Phases {
  return {
    solid: material.specificHeat.value,
    melt: material.meltSpecificHeat.value,
    transition: material.transitionTemperature.value,
    fusion: material.heatOfFusion.value,
  };
}

/** At the rate of the screw, °C. */
export function meltTemperature(input: CompleteInput): number {
  const stated = input["product.meltTemperature"];
  const rate = input["delivery.matchedRate"];
  const [from, rise, per] = riseKeys.map((key) => input[key]);
  const isKnown = rate !== undefined && from !== undefined && rise !== undefined && per !== undefined;
  return isKnown ? stated + meltRise(rate, { from, rise, per }) : stated;
}

/** W of one mold between melt and demold temperature. */
export function moldHeat(input: CompleteInput): number {
  const demold = input["product.demoldTemperature"];
  const melt = Math.max(demold, meltTemperature(input));
  return (input["station.throughput"] ?? 0) * enthalpyChange(phasesOf(input), demold, melt);
}

/** Under the heat load, °C. */
export function moldTemperature(input: CompleteInput): number {
  return loadedMold(input["product.moldTemperature"], input["station.moldResistance"] ?? 0, moldHeat(input));
}

/** In °C; melt is never colder than the demold temperature. */
export function temperaturesOf(input: CompleteInput): {
  readonly melt: number;
  readonly mold: number;
  readonly demold: number;
} {
  const demold = input["product.demoldTemperature"];
  // A mold at the demold temperature cools for ever, as a hotter one does.
  const mold = Math.min(moldTemperature(input), Math.max(demold, input["product.moldTemperature"]));
  return { melt: Math.max(demold, meltTemperature(input)), mold, demold };
}
