// Makes the table of message codes from the lists in the sources.
import { estimateIssueCodes } from "#analysis/window/settleEstimates.ts";
import { standstillCodes } from "#analysis/study/standstillIssue.ts";
import { compareIssueCodes } from "#cli/commands/compare.ts";
import { fileIssueCodes } from "#cli/machine/readTextFile.ts";
import { issueCodes } from "#scenario/reading/issueCodes.ts";
import { withReadmeTable } from "./readmeTable.ts";

/** The same text with the regenerated table between its two marks. */
export function withCodeTable(readme: string): string {
  const lists = [fileIssueCodes, issueCodes, compareIssueCodes, standstillCodes, estimateIssueCodes];
  const meanings = new Map(lists.flatMap((list) => Object.entries(list)));
  const rows = [...meanings].map(([code, meaning]) => [`\`${code}\``, sentence(meaning)] as const);
  return withReadmeTable(readme, "codes", [["code", "meaning"], ...rows]);
}

function sentence(meaning: string): string {
  return meaning.charAt(0).toLowerCase() + meaning.slice(1).replace(/\.$/, "");
}
