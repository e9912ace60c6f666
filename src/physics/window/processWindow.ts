// The process window: every row that the given values allow, and the keys that would give the others.
import { airRules } from "./airRules.ts";
import { coolingRules } from "./coolingRules.ts";
import { parisonRules } from "./parisonRules.ts";
import { practiceRules } from "./practiceRules.ts";
import { screwRules } from "./screwRules.ts";
import { completeInput, type EstimatedTime, type WindowInput } from "./windowInput.ts";
import type { WindowKey } from "./windowKeys.ts";
import type { WindowRow, WindowRule } from "./windowRule.ts";

const rules: readonly WindowRule[] = [...coolingRules, ...parisonRules, ...screwRules, ...airRules, ...practiceRules];

/** The rows whose needs are all given, in the order cooling, parison, screw, air and clamp, common practice. */
export function processWindow(input: WindowInput): readonly WindowRow[] {
  const complete = completeInput(input);
  return rules.flatMap((rule) => rule.row(complete) ?? []);
}

export interface MissingRow {
  readonly quantity: string;
  /** Paths of a scenario that would give it. */
  readonly keys: readonly WindowKey[];
  /** The step whose time it would give. */
  readonly estimates: EstimatedTime | undefined;
}

/** The rows left out, each with the keys that would give it. */
export function missingRows(input: WindowInput): readonly MissingRow[] {
  const complete = completeInput(input);
  return rules
    .filter((rule) => rule.applies(input))
    .map(({ quantity, needs, estimates }) => ({
      quantity: quantity(input),
      keys: needs.filter((key) => complete[key] === undefined),
      estimates,
    }))
    .filter(({ keys }) => keys.length > 0);
}
