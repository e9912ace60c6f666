// The process window: every row that the given values allow, and the missing keys of all other rows.
import { airRules } from "./airRules.ts";
import { coolingRules } from "./coolingRules.ts";
import { heatRules } from "./heatRules.ts";
import { parisonRules } from "./parisonRules.ts";
import { practiceRules } from "./practiceRules.ts";
import { screwRules } from "./screwRules.ts";
import { completeInput, type EstimatedTime, type WindowInput } from "./windowInput.ts";
import type { WindowKey } from "./windowKeys.ts";
import type { WindowRow, WindowRule } from "./windowRule.ts";

/** The subject of a group of rows. */
type WindowField = "cooling" | "heat" | "parison and die" | "screw and drive" | "air and clamp" | "usual ranges";

const fields: readonly (readonly [WindowField, readonly WindowRule[]])[] = [
  ["cooling", coolingRules],
  ["heat", heatRules],
  ["parison and die", parisonRules],
  ["screw and drive", screwRules],
  ["air and clamp", airRules],
  ["usual ranges", practiceRules],
];
const rules = fields.flatMap(([field, own]) => own.map((rule) => ({ field, rule })));

/** The description of a row without an input. */
export interface WindowFacts extends Pick<WindowRule, "meaning" | "unit" | "source" | "needs" | "below" | "above"> {
  readonly field: WindowField;
  /** Some rows have a name for each criterion, kind of delivery or assumption. */
  readonly quantities: readonly string[];
}

const criteria = ["hottest point", "mean"] as const;
const assumptions = [[], ["station.moldContact"]] as const;
const kinds = ["reciprocating-screw", "continuous"] as const;

/** The descriptions of all possible rows, field by field. */
export function windowFacts(): readonly WindowFacts[] {
  const inputs = criteria.flatMap((coolingTo) =>
    kinds.flatMap((deliveryKind) => assumptions.map((assumed) => ({ coolingTo, deliveryKind, assumed }))),
  );
  return rules.map(({ field, rule }) => ({ ...rule, field, quantities: [...new Set(inputs.map(rule.quantity))] }));
}

/** The rows whose needs are all given, field by field. */
export function processWindow(input: WindowInput): readonly WindowRow[] {
  const complete = completeInput(input);
  return rules.flatMap(({ rule }) => rule.row(complete) ?? []);
}

export interface MissingRow {
  readonly field: WindowField;
  readonly quantity: string;
  /** The missing paths of the scenario. */
  readonly keys: readonly WindowKey[];
  /** The step whose time the row gives. */
  readonly estimates: EstimatedTime | undefined;
}

/** The rows left out, each with its missing keys. */
export function missingRows(input: WindowInput): readonly MissingRow[] {
  const complete = completeInput(input);
  return rules
    .filter(({ rule }) => rule.applies(input))
    .map(({ field, rule: { quantity, needs, estimates } }) => ({
      field,
      quantity: quantity(input),
      keys: needs.filter((key) => complete[key] === undefined),
      estimates,
    }))
    .filter(({ keys }) => keys.length > 0);
}
