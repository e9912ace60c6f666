// One row of the process window as data: its required keys, its value, its limits, and the remedy outside them.
import { knows, type CompleteInput, type EstimatedTime, type Known, type WindowInput } from "./windowInput.ts";
import type { WindowKey } from "./windowKeys.ts";

export interface Limits {
  readonly low?: number | undefined;
  readonly high?: number | undefined;
}

/** `no limit` where no limit is given or published. */
export type Verdict = "inside" | "below" | "above" | "no limit";

export interface WindowRow {
  readonly quantity: string;
  readonly value: number;
  readonly unit: string;
  readonly low: number | null;
  readonly high: number | null;
  readonly verdict: Verdict;
  /** "" inside the limits. */
  readonly remedy: string;
  readonly source: string;
  /** The limits are common practice: outside them a typing error is likely, but the part may be good. */
  readonly isPractice: boolean;
  /** The step whose time this row gives where a scenario says `estimate`. */
  readonly estimates?: EstimatedTime;
}

/** What the name of a row may depend on. */
export type NamingInput = Pick<WindowInput, "coolingTo" | "deliveryKind" | "assumed">;

interface RuleBody<Input> {
  readonly quantity: string | ((input: NamingInput) => string);
  readonly meaning: string;
  readonly unit: string;
  readonly source: string;
  readonly value: (input: Input) => number;
  readonly limits?: (input: Input) => Limits;
  /** The remedy when the value is below or above its limits. */
  readonly below?: string;
  readonly above?: string;
  readonly isPractice?: boolean;
  readonly estimates?: EstimatedTime;
  /** False where the row does not apply to this machine or product. */
  readonly applies?: (input: WindowInput) => boolean;
}

export interface WindowRule extends Pick<RuleBody<never>, "meaning" | "unit" | "source" | "below" | "above"> {
  readonly quantity: (input: NamingInput) => string;
  readonly needs: readonly WindowKey[];
  readonly estimates: EstimatedTime | undefined;
  readonly applies: (input: WindowInput) => boolean;
  /** Null where a required key is not given. */
  readonly row: (input: CompleteInput) => WindowRow | null;
}

export function windowRule<Key extends WindowKey>(needs: readonly Key[], body: RuleBody<Known<Key>>): WindowRule {
  const applies = body.applies ?? (() => true);
  const { meaning, unit, source, below, above } = body;
  return {
    meaning,
    unit,
    source,
    ...(below === undefined ? {} : { below }),
    ...(above === undefined ? {} : { above }),
    quantity: (input) => quantityOf(body, input),
    needs,
    estimates: body.estimates,
    applies,
    row: (input) => (knows(input, needs) && applies(input) ? rowOf(input, body) : null),
  };
}

function quantityOf({ quantity }: Pick<RuleBody<never>, "quantity">, input: NamingInput): string {
  return typeof quantity === "string" ? quantity : quantity(input);
}

function rowOf<Input extends CompleteInput>(input: Input, body: RuleBody<Input>): WindowRow {
  const value = body.value(input);
  const { low, high } = body.limits?.(input) ?? {};
  const verdict = verdictOf(value, low, high);
  const remedy = verdict === "below" ? body.below : verdict === "above" ? body.above : "";
  return {
    quantity: quantityOf(body, input),
    value,
    unit: body.unit,
    low: low ?? null,
    high: high ?? null,
    verdict,
    remedy: remedy ?? "",
    source: body.source,
    isPractice: body.isPractice ?? false,
    ...(body.estimates === undefined ? {} : { estimates: body.estimates }),
  };
}

/** Rounding may put a value outside its limit by this share of the limit. */
const TOLERANCE = 1e-9;

function verdictOf(value: number, low: number | undefined, high: number | undefined): Verdict {
  if (low === undefined && high === undefined) return "no limit";
  if (low !== undefined && value < low - Math.abs(low) * TOLERANCE) return "below";
  return high !== undefined && value > high + Math.abs(high) * TOLERANCE ? "above" : "inside";
}
