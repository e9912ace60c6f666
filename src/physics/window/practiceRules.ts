// The part of the process window that compares figures with common practice, to find typing errors.
import { plausibleRanges, rangeOfPart, sizedRanges, type PlausibleRange, type SizedRange } from "./plausibleRanges.ts";
import type { Known, WindowInput } from "./windowInput.ts";
import type { WindowKey } from "./windowKeys.ts";
import { windowRule, type Limits, type WindowRule } from "./windowRule.ts";

interface UsualBody<Key extends WindowKey> {
  readonly value: (input: Known<Key>) => number;
  /** What to check outside the range. */
  readonly check: string;
  readonly applies?: (input: WindowInput) => boolean;
}

const MEANING = "Compared with the usual range of production: a value outside it may be a typing error.";
const SIZED_MEANING =
  "Compared with the usual range of production for a part of this mass: a value outside it may be a typing error.";

function usualRule<Key extends WindowKey>(
  needs: readonly Key[],
  range: PlausibleRange | SizedRange,
  { value, check, applies }: UsualBody<Key>,
): WindowRule {
  const { quantity, unit, source } = range;
  const hint = `Unusual, not wrong: ${check}.`;
  const when = applies === undefined ? {} : { applies };
  const isSized = "bySize" in range;
  const limits = (input: WindowInput): Limits => (isSized ? rangeOfPart(range, input["product.partMass"]) : range);
  return windowRule(needs, {
    quantity,
    meaning: isSized ? SIZED_MEANING : MEANING,
    unit,
    source,
    value,
    limits,
    below: hint,
    above: hint,
    isPractice: true,
    ...when,
  });
}

const byMachine = ({ removedBy = "machine" }: WindowInput): boolean => removedBy === "machine";

const { simpleFlash, handleFlash } = plausibleRanges;
const flash: PlausibleRange = { ...simpleFlash, quantity: "flash, of the part", high: handleFlash.high };
const percent = ({ low, high }: PlausibleRange): string => `${100 * low} to ${100 * high} %`;

export const practiceRules: readonly WindowRule[] = [
  usualRule(["station.steps.cool", "station.cycle"], sizedRanges.coolingShare, {
    value: (input) => input["station.steps.cool"] / input["station.cycle"],
    check:
      "check the cool time and the other steps. Where the share is high, a colder mold or a thinner thickest place can save more time than faster motions",
    applies: byMachine,
  }),
  usualRule(["station.steps.drop"], sizedRanges.screwDrop, {
    value: (input) => input["station.steps.drop"],
    check: "check the drop time or the delivery rate",
    applies: ({ deliveryKind = "reciprocating-screw" }) => deliveryKind === "reciprocating-screw",
  }),
  usualRule(["station.steps.drop"], sizedRanges.accumulatorDrop, {
    value: (input) => input["station.steps.drop"],
    check: "check the drop time or the delivery rate",
    applies: ({ deliveryKind }) => deliveryKind === "accumulator-head",
  }),
  usualRule(["station.steps.close", "station.steps.open"], sizedRanges.closeAndOpen, {
    value: (input) => input["station.steps.close"] + input["station.steps.open"],
    check: "check both times; they include lock-up, pin entry and pin exit",
  }),
  usualRule(["station.steps.vent"], sizedRanges.vent, {
    value: (input) => input["station.steps.vent"],
    check: "check station.steps.vent",
  }),
  usualRule(["station.steps.remove"], sizedRanges.removal, {
    value: (input) => input["station.steps.remove"],
    check: "check station.steps.remove; a removal by an operator takes longer and says `by: operator`",
    applies: byMachine,
  }),
  usualRule(["station.steps.remove"], sizedRanges.removalByOperator, {
    value: (input) => input["station.steps.remove"],
    check: "check station.steps.remove; the walk is no part of it",
    applies: (input) => !byMachine(input),
  }),
  usualRule(["product.die.diameter", "product.die.mandrel"], plausibleRanges.dieGap, {
    value: (input) => (input["product.die.diameter"] - input["product.die.mandrel"]) / 2,
    check: "check both diameters",
  }),
  usualRule(["product.partMass", "product.flash"], flash, {
    value: (input) => input["product.flash"] / input["product.partMass"],
    check: `a simple round part has ${percent(simpleFlash)}, a part with a handle ${percent(handleFlash)}. Check whether the share is of the part or of all that is extruded`,
  }),
  windowRule(["product.partMass", "product.flash"], {
    quantity: "flash, of all that is extruded",
    meaning: "Flash as a share of all extruded melt, not of the part.",
    unit: "1",
    source: "the same flash on another base: 30 % of all that is extruded is 43 % of the part",
    value: (input) => input["product.flash"] / (input["product.partMass"] + input["product.flash"]),
  }),
  usualRule(["product.blowPressure"], plausibleRanges.blowPressure, {
    value: (input) => input["product.blowPressure"],
    check: "check product.blowPressure; pressures are gauge",
  }),
  usualRule([], plausibleRanges.rejects, {
    value: (input: WindowInput) => input["station.rejects"] ?? 0,
    check: "check the rejects and their reasons",
    applies: (input) => input["station.rejects"] !== undefined,
  }),
];
