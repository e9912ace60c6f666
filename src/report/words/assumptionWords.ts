// What a scenario did not enter, so that its result is a best case.
import type { Scenario } from "#scenario/scenario.ts";

interface Assumption {
  /** "no stops". */
  readonly text: string;
  /** The key that would replace it. */
  readonly key: string;
}

export function assumptionsOf(scenario: Scenario): readonly Assumption[] {
  return [
    ...(scenario.stops ? [] : [{ text: "no stops", key: "stops" }]),
    ...(canReject(scenario) ? [] : [{ text: "no rejects", key: "quality" }]),
  ];
}

function canReject({ quality, maxInMold, startUp, takeaway = [] }: Scenario): boolean {
  const isRejecting = takeaway.some(({ rejects, maxAge }) => rejects > 0 || maxAge !== undefined);
  return quality !== undefined || maxInMold !== undefined || (startUp?.scrap ?? 0) > 0 || isRejecting;
}

const mostNames = 3;

/** "No stops, no rejects: a best case (enter `stops`, `quality`)."; scenarios with the same gaps share a line. */
export function assumptionWords(scenarios: readonly Scenario[]): readonly string[] {
  const groups = new Map<string, string[]>();
  for (const scenario of scenarios) {
    const assumptions = assumptionsOf(scenario);
    if (assumptions.length === 0) continue;
    const texts = assumptions.map(({ text }) => text).join(", ");
    const keys = assumptions.map(({ key }) => `\`${key}\``).join(", ");
    const words = `${texts.charAt(0).toUpperCase()}${texts.slice(1)}: a best case (enter ${keys}).`;
    groups.set(words, [...(groups.get(words) ?? []), scenario.name]);
  }
  return [...groups].map(([words, names]) => {
    if (names.length === scenarios.length) return words;
    return `${names.length > mostNames ? `${names.length} of ${scenarios.length} layouts` : names.join(", ")}: ${words}`;
  });
}
