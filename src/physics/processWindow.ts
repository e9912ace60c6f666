// The process window: every line that the given values allow, and what would give the others.
import { airRules } from "./airRules.ts";
import { coolingRules } from "./coolingRules.ts";
import { parisonRules } from "./parisonRules.ts";
import { screwRules } from "./screwRules.ts";
import type { WindowInput, WindowKey } from "./windowInput.ts";
import { concerns, type WindowRow, type WindowRule } from "./windowRule.ts";

const rules: readonly WindowRule[] = [...coolingRules, ...parisonRules, ...screwRules, ...airRules];

/** The rows whose needs are all given, in the order of the trade: cooling, parison, screw, air and clamp. */
export function processWindow(input: WindowInput): readonly WindowRow[] {
  return rules.filter((rule) => concerns(rule, input)).flatMap((rule) => rule.row(input) ?? []);
}

export interface MissingRow {
  readonly quantity: string;
  /** Paths of a scenario that would give it. */
  readonly keys: readonly WindowKey[];
}

/** The rows left out, each with the keys that would give it. */
export function missingRows(input: WindowInput): readonly MissingRow[] {
  return rules
    .filter((rule) => concerns(rule, input))
    .map(({ quantity, needs }) => ({ quantity, keys: needs.filter((key) => input[key] === undefined) }))
    .filter(({ keys }) => keys.length > 0);
}
