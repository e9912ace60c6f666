// The wanted chance of a due date.
import type { Issue, IssueMeaning } from "#foundation/issue.ts";
import { parseChance, usualChance } from "#scenario/order/chanceText.ts";
import type { OptionSpec, Options } from "./command.ts";

export const chanceOption: OptionSpec = {
  flags: "--chance <share>",
  meaning: `wanted chance of the due date (default: ${usualChance})`,
};

export const chanceIssueCodes = {
  "chance-range": ["the wanted chance is no share above 0 and below 100 %", `Write a share such as ${usualChance}.`],
} as const satisfies Readonly<Record<string, IssueMeaning>>;

/** A share above 0 and below 1. */
export function chanceOf({ chance = usualChance }: Options): number | Issue {
  const read = parseChance(chance);
  if (typeof read === "number") return read;
  return { ...read, severity: "error", fate: "file", option: "--chance", path: "", value: chance };
}
