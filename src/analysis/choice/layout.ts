// A layout to choose from, with what its options cost.
import type { OptionSpec, Scenario } from "#scenario/scenario.ts";

export interface Layout {
  readonly scenario: Scenario;
  /** m² of its options; null where none of the file gives any. */
  readonly floorSpace: number | null;
}

/** What it costs to buy, in the currency; null where that is not given. */
export function investmentOf({ scenario }: Layout): number | null {
  return scenario.costs?.investment ?? null;
}

/**
 * The layout of a scenario that was read with the settings of its options. Their prices are added to those of the cell, to `investment`
 * and to the rate of the machine, so that the costs of all layouts are sums of the same items.
 */
export function layoutOf({ options = [], ...scenario }: Scenario, chosen: readonly OptionSpec[]): Layout {
  const sum = (key: "investment" | "perHour" | "floorSpace"): number | null =>
    options.some((option) => option[key] !== undefined)
      ? chosen.reduce((total, option) => total + (option[key] ?? 0), 0)
      : null;
  const [investment, perHour, { costs }] = [sum("investment"), sum("perHour"), scenario];
  const priced = costs && {
    ...costs,
    ...(investment === null ? {} : { investment: (costs.investment ?? 0) + investment }),
    ...(perHour === null ? {} : { machine: (costs.machine ?? 0) + perHour }),
  };
  return { scenario: { ...scenario, ...(priced ? { costs: priced } : {}) }, floorSpace: sum("floorSpace") };
}
