// The part of the process window that compares figures with common practice, to find typing errors.
import { plausibleRanges, type PlausibleRange } from "./plausibleRanges.ts";
import type { Known, WindowInput } from "./windowInput.ts";
import type { WindowKey } from "./windowKeys.ts";
import { windowRule, type WindowRule } from "./windowRule.ts";

interface UsualBody<Key extends WindowKey> {
  readonly value: (input: Known<Key>) => number;
  /** What to check outside the range. */
  readonly check: string;
  readonly applies?: (input: WindowInput) => boolean;
}

function usualRule<Key extends WindowKey>(
  needs: readonly Key[],
  range: PlausibleRange,
  { value, check, applies }: UsualBody<Key>,
): WindowRule {
  const { quantity, unit, source } = range;
  const hint = `Unusual, not wrong: ${check}.`;
  const when = applies === undefined ? {} : { applies };
  const limits = () => range;
  return windowRule(needs, {
    quantity,
    meaning: "Compared with the usual range of production: a value outside it may be a typing error.",
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

const cycle = ["station.steps.cool", "station.steps.drop", "station.steps.close"] as const;

function coolingShare(input: Known<(typeof cycle)[number]>): number {
  const others = ["drop", "close", "blow", "vent", "open", "remove"] as const;
  const cool = input["station.steps.cool"];
  return cool / others.reduce((sum, step) => sum + (input[`station.steps.${step}`] ?? 0), cool);
}

const { simpleFlash, handleFlash } = plausibleRanges;
const flash: PlausibleRange = { ...simpleFlash, quantity: "flash, of the part", high: handleFlash.high };
const percent = ({ low, high }: PlausibleRange): string => `${100 * low} to ${100 * high} %`;

export const practiceRules: readonly WindowRule[] = [
  usualRule(cycle, plausibleRanges.coolingShare, {
    value: coolingShare,
    check:
      "check the cool time and the other steps. Where the share is high, a colder mold or a thinner thickest place can save more time than faster motions",
  }),
  usualRule(["station.steps.drop"], plausibleRanges.screwDrop, {
    value: (input) => input["station.steps.drop"],
    check: "check the drop time or the delivery rate",
    applies: ({ deliveryKind = "reciprocating-screw" }) => deliveryKind === "reciprocating-screw",
  }),
  usualRule(["station.steps.drop"], plausibleRanges.accumulatorDrop, {
    value: (input) => input["station.steps.drop"],
    check: "check the drop time or the delivery rate",
    applies: ({ deliveryKind }) => deliveryKind === "accumulator-head",
  }),
  usualRule(["station.steps.close", "station.steps.open"], plausibleRanges.closeAndOpen, {
    value: (input) => input["station.steps.close"] + input["station.steps.open"],
    check: "check both times; they include lock-up, pin entry and pin exit",
  }),
  usualRule(["station.steps.vent"], plausibleRanges.vent, {
    value: (input) => input["station.steps.vent"],
    check: "check station.steps.vent",
  }),
  usualRule(["station.steps.remove"], plausibleRanges.removal, {
    value: (input) => input["station.steps.remove"],
    check: "check station.steps.remove; a removal by an operator takes longer",
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
