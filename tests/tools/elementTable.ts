// The README's table of time elements, made from the rules that the simulation goes by.
import { elementRules } from "#cell/elementWords.ts";
import { withReadmeTable } from "./readmeTable.ts";

export function withElementTable(readme: string): string {
  const rows = elementRules.map(({ states, kind, element, reason }) => [
    states?.map((state) => `\`${state}\``).join(", ") ?? `all other states that are \`${kind}\``,
    element,
    reason,
  ]);
  return withReadmeTable(readme, "elements", [["state", "time element", "because it is"], ...rows]);
}
