// From the draft of the costs to rates: molds given by price and life become a cost per part.
import type { ScenarioDraft } from "./resolution.ts";
import type { CostSpec } from "#scenario/scenario.ts";

type CostDraft = NonNullable<ScenarioDraft["costs"]>;

/** Undefined where none are given; a currency that could not be read has been reported already. */
export function resolveCosts(draft: CostDraft | undefined): CostSpec | undefined {
  const { currency, tooling, ...rates } = draft ?? {};
  if (currency === undefined) return undefined;
  const given = Object.entries({ ...rates, tooling: perPart(tooling) }).filter(([, rate]) => rate !== undefined);
  return { currency, ...(Object.fromEntries(given) as Omit<CostSpec, "currency">) };
}

function perPart(tooling: CostDraft["tooling"]): number | undefined {
  if (typeof tooling !== "object") return tooling;
  const { price, life } = tooling;
  return price === undefined || life === undefined ? undefined : price / life;
}
