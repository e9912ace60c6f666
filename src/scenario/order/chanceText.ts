// Parses the wanted chance of a due date.
import type { Fault } from "#foundation/fault.ts";
import { isQuantity, parseQuantity } from "#foundation/quantity.ts";

/** Where the call does not say it. */
export const usualChance = "95 %";

/** A share above 0 and below 1. */
export function parseChance(text: string): number | Fault {
  const read = parseQuantity(text, "share");
  if (isQuantity(read) && read.value > 0 && read.value < 1) return read.value;
  return {
    code: "chance-range",
    message: isQuantity(read) ? `A chance of ${text} is never decided by runs.` : read.message,
    expected: "a share above 0 % and below 100 %",
    remedy: `Write a share such as ${usualChance}.`,
  };
}
