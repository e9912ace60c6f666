// The README's table of codes, made from the lists that the sources keep.
import { estimateIssueCodes } from "#analysis/settleEstimates.ts";
import { standstillCodes } from "#analysis/standstillIssue.ts";
import { compareIssueCodes } from "#cli/compare.ts";
import { fileIssueCodes } from "#cli/readTextFile.ts";
import { issueCodes } from "#scenario/issueCodes.ts";

const begin = "<!-- codes -->";
const end = "<!-- /codes -->";

/** The same text with the table between its two marks made anew. */
export function withCodeTable(readme: string): string {
  const lists = [fileIssueCodes, issueCodes, compareIssueCodes, standstillCodes, estimateIssueCodes];
  const meanings = new Map(lists.flatMap((list) => Object.entries(list)));
  const rows = [...meanings].map(([code, meaning]) => [`\`${code}\``, sentence(meaning)] as const);
  const cells = [["code", "meaning"] as const, ...rows];
  const widths = [0, 1].map((column) => Math.max(...cells.map((row) => row[column]!.length)));
  const line = (row: readonly string[]): string => `| ${row.map((cell, i) => cell.padEnd(widths[i]!)).join(" | ")} |`;
  const rule = widths.map((width) => "-".repeat(width));
  // As the formatter writes tables, so that neither undoes the other's work.
  const table = [cells[0]!, rule, ...rows].map(line).join("\n");
  const from = readme.indexOf(begin) + begin.length;
  return `${readme.slice(0, from)}\n\n${table}\n\n${readme.slice(readme.indexOf(end))}`;
}

function sentence(meaning: string): string {
  return meaning.charAt(0).toLowerCase() + meaning.slice(1).replace(/\.$/, "");
}
