// Warns where a setting puts a constant in the place of a distribution.
import type { Fault } from "#foundation/fault.ts";
import { distributionShapes } from "#scenario/distributions/distributionShape.ts";
import { isMapping } from "#scenario/values/key.ts";

/** Both as plain data; undefined where no spread is lost. */
export function lostSpread(before: unknown, after: unknown): Fault | undefined {
  if (!hasSpread(before) || hasSpread(after) || !isConstant(after)) return undefined;
  return {
    code: "set-spread",
    message: "A constant replaces a distribution: the spread is gone.",
    remedy: "Use a move such as `-1 s` or `+10 %` to keep the spread.",
  };
}

/** A distribution, alone or as the time of a removal. */
function hasSpread(value: unknown): boolean {
  if (!isMapping(value)) return false;
  if (hasSpread(value["time"])) return true;
  return Object.keys(value).some((key) => key === "empirical" || Object.hasOwn(distributionShapes, key));
}

/** A number with its unit; one without is refused anyway, and an estimate is computed. */
function isConstant(value: unknown): boolean {
  if (isMapping(value)) return isConstant(value["time"]);
  return typeof value === "string" && /^\s*[\d.]/u.test(value);
}
