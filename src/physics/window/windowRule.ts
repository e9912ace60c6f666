// One line of the process window as data: what it needs, what it works out, between which limits, and what to do beyond.
import type { EstimatedTime, Known, WindowInput, WindowKey } from "./windowInput.ts";

export interface Limits {
  readonly low?: number | undefined;
  readonly high?: number | undefined;
}

/** `no limit` where nothing was given or published to hold the value against. */
export type Verdict = "inside" | "below" | "above" | "no limit";

export interface WindowRow {
  readonly quantity: string;
  readonly value: number;
  readonly unit: string;
  readonly low: number | null;
  readonly high: number | null;
  readonly verdict: Verdict;
  /** "" where there is nothing to do. */
  readonly remedy: string;
  readonly source: string;
  /** The limits are what is usual on the floor: beyond them a slip is likely, but nothing is wrong with the part. */
  readonly isPractice: boolean;
  /** The step whose time this row gives where a scenario leaves it open. */
  readonly estimates?: EstimatedTime;
}

interface RuleBody<Input> {
  readonly quantity: string | ((input: WindowInput) => string);
  readonly unit: string;
  readonly source: string;
  readonly value: (input: Input) => number;
  readonly limits?: (input: Input) => Limits;
  /** What to do when the value is below or above its limits. */
  readonly below?: string;
  readonly above?: string;
  readonly isPractice?: boolean;
  readonly estimates?: EstimatedTime;
  /** False where the row would say nothing of this machine or product, whatever is given. */
  readonly applies?: (input: WindowInput) => boolean;
}

export interface WindowRule {
  readonly quantity: (input: WindowInput) => string;
  readonly needs: readonly WindowKey[];
  readonly estimates: EstimatedTime | undefined;
  readonly applies: (input: WindowInput) => boolean;
  /** Null where a key that it needs was not given. */
  readonly row: (input: WindowInput) => WindowRow | null;
}

export function windowRule<Key extends WindowKey>(needs: readonly Key[], body: RuleBody<Known<Key>>): WindowRule {
  const applies = body.applies ?? (() => true);
  return {
    quantity: (input) => quantityOf(body, input),
    needs,
    estimates: body.estimates,
    applies,
    row: (input) => (knows(input, needs) && applies(input) ? rowOf(input, body) : null),
  };
}

function quantityOf({ quantity }: Pick<RuleBody<never>, "quantity">, input: WindowInput): string {
  return typeof quantity === "string" ? quantity : quantity(input);
}

function knows<Key extends WindowKey>(input: WindowInput, needs: readonly Key[]): input is Known<Key> {
  return needs.every((key) => input[key] !== undefined);
}

function rowOf<Input extends WindowInput>(input: Input, body: RuleBody<Input>): WindowRow {
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

/** Sums of binary fractions miss a limit they should meet by a hair: 1e-9 of it is no fault. */
const HAIR = 1e-9;

function verdictOf(value: number, low: number | undefined, high: number | undefined): Verdict {
  if (low === undefined && high === undefined) return "no limit";
  if (low !== undefined && value < low - Math.abs(low) * HAIR) return "below";
  return high !== undefined && value > high + Math.abs(high) * HAIR ? "above" : "inside";
}
