// Makes the table of message codes from the lists in the sources.
import { issueMeanings } from "#cli/commands/issueMeanings.ts";
import { withReadmeTable } from "./readmeTable.ts";

/** The same text with the regenerated table between its two marks. */
export function withCodeTable(readme: string): string {
  const rows = [...issueMeanings].map(([code, [meaning, remedy]]) => [`\`${code}\``, meaning, remedy] as const);
  return withReadmeTable(readme, "codes", [["code", "meaning", "remedy"], ...rows]);
}
