// Makes the table of time elements from the rules of the simulation.
import { elementRules, planRules } from "#cell/words/elementWords.ts";
import { withReadmeTable } from "./readmeTable.ts";

export function withElementTable(readme: string): string {
  const rows = elementRules.map(({ states, kind, element, reason }) => [
    states?.map((state) => `\`${state}\``).join(", ") ?? `all other states that are \`${kind}\``,
    element,
    reason,
  ]);
  const planned = planRules.map(({ when, counts, reason }) => [when, counts, reason]);
  return withReadmeTable(readme, "elements", [["state", "time element", "because it is"], ...rows, ...planned]);
}
