// The wanted chance of a due date.
import type { Issue } from "#foundation/issue.ts";
import { parseChance, usualChance } from "#scenario/order/chanceText.ts";
import type { OptionSpec, Options } from "./command.ts";

export const chanceOption: OptionSpec = {
  flags: "--chance <share>",
  meaning: `wanted chance of the due date (default: ${usualChance})`,
};

/** A share above 0 and below 1. */
export function chanceOf({ chance = usualChance }: Options): number | Issue {
  const read = parseChance(chance);
  if (typeof read === "number") return read;
  return { ...read, severity: "error", fate: "file", option: "--chance", path: "", value: chance };
}
