// One line of the process window as data: what it needs, what it works out, between which limits, and what to do beyond.
import type { DeliveryKind, Known, WindowInput, WindowKey } from "./windowInput.ts";

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
}

interface RuleBody<Input> {
  readonly quantity: string;
  readonly unit: string;
  readonly source: string;
  readonly value: (input: Input) => number;
  readonly limits?: (input: Input) => Limits;
  /** What to do when the value is below or above its limits. */
  readonly below?: string;
  readonly above?: string;
}

export interface WindowRule {
  readonly quantity: string;
  readonly needs: readonly WindowKey[];
  /** Null where a key that it needs was not given. */
  readonly row: (input: WindowInput) => WindowRow | null;
  /** Kinds of melt delivery of which it may be asked; all if not given. */
  readonly kinds?: readonly DeliveryKind[];
}

export function windowRule<Key extends WindowKey>(needs: readonly Key[], body: RuleBody<Known<Key>>): WindowRule {
  return { quantity: body.quantity, needs, row: (input) => (knows(input, needs) ? rowOf(input, body) : null) };
}

/** The rule for these kinds of melt delivery only. */
export function onlyFor(kinds: readonly DeliveryKind[], rule: WindowRule): WindowRule {
  return { ...rule, kinds };
}

export function concerns({ kinds }: WindowRule, { delivery = "reciprocating-screw" }: WindowInput): boolean {
  return kinds?.includes(delivery) ?? true;
}

function knows<Key extends WindowKey>(input: WindowInput, needs: readonly Key[]): input is Known<Key> {
  return needs.every((key) => input[key] !== undefined);
}

function rowOf<Input>(input: Input, body: RuleBody<Input>): WindowRow {
  const value = body.value(input);
  const { low, high } = body.limits?.(input) ?? {};
  const verdict = verdictOf(value, low, high);
  const remedy = verdict === "below" ? body.below : verdict === "above" ? body.above : "";
  const { quantity, unit, source } = body;
  return { quantity, value, unit, low: low ?? null, high: high ?? null, verdict, remedy: remedy ?? "", source };
}

/** Sums of binary fractions miss a limit they should meet by a hair: 1e-9 of it is no fault. */
const HAIR = 1e-9;

function verdictOf(value: number, low: number | undefined, high: number | undefined): Verdict {
  if (low === undefined && high === undefined) return "no limit";
  if (low !== undefined && value < low - Math.abs(low) * HAIR) return "below";
  return high !== undefined && value > high + Math.abs(high) * HAIR ? "above" : "inside";
}
