// The README's table of time elements, made from the rules that the simulation goes by.
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
