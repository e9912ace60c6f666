// The wanted chance of a due date.
import type { Issue, IssueMeaning } from "#foundation/issue.ts";
import { isQuantity, parseQuantity } from "#foundation/quantity.ts";
import type { OptionSpec, Options } from "./command.ts";

const usual = "95 %";

export const chanceOption: OptionSpec = {
  flags: "--chance <share>",
  meaning: `wanted chance of the due date (default: ${usual})`,
};

export const chanceIssueCodes = {
  "chance-range": ["the wanted chance is no share above 0 and below 100 %", `Write a share such as ${usual}.`],
} as const satisfies Readonly<Record<string, IssueMeaning>>;

/** A share above 0 and below 1. */
export function chanceOf({ chance = usual }: Options): number | Issue {
  const read = parseQuantity(chance, "share");
  if (isQuantity(read) && read.value > 0 && read.value < 1) return read.value;
  return {
    code: "chance-range",
    severity: "error",
    option: "--chance",
    path: "",
    message: isQuantity(read) ? `A chance of ${chance} is never decided by runs.` : read.message,
    value: chance,
    expected: "a share above 0 % and below 100 %",
    remedy: `Write a share such as ${usual}.`,
    fate: "file",
  };
}
