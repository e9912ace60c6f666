// The changes that a cell takes: each wish whose settings the reader accepts, with the changed cell.
import type { Scenario } from "#scenario/scenario.ts";
import type { Wish } from "./wish.ts";
import { wishesFor } from "./wishes.ts";

export interface Lever {
  readonly wish: Wish;
  /** The values of `--set` that make the change. */
  readonly settings: readonly string[];
  /** The changed cell, with the seed, length and warm-up of the cell. */
  readonly scenario: Scenario;
}

/** Reads the text of the cell with further settings, as `--set` does; undefined where the reader refuses them. */
export type Vary = (settings: readonly string[]) => Scenario | undefined;

/** A wish that changes nothing is no lever. */
export function leversOf(scenario: Scenario, vary: Vary, wishes = wishesFor(scenario)): readonly Lever[] {
  const asItIs = vary([]);
  return asItIs === undefined ? [] : wishes.flatMap((wish) => leverFor(wish, scenario, asItIs, vary) ?? []);
}

function leverFor(wish: Wish, scenario: Scenario, asItIs: Scenario, vary: Vary): Lever | undefined {
  const accepted: string[] = [];
  let changed: Scenario | undefined;
  for (const settings of wish.alternatives) {
    const tried = vary([...accepted, ...settings]);
    if (tried === undefined || !isWished(wish, asItIs, tried)) continue;
    accepted.push(...settings);
    changed = tried;
    if (wish.joins === undefined) break;
  }
  return changed && { wish, settings: accepted, scenario: { ...changed, run: scenario.run } };
}

function isWished({ only, adds = 0 }: Wish, asItIs: Scenario, tried: Scenario): boolean {
  if (JSON.stringify(tried) === JSON.stringify(asItIs)) return false;
  if (tried.stations.length !== asItIs.stations.length + adds) return false;
  if (only === undefined) return true;
  return tried.stations.every((station, i) => {
    const before = asItIs.stations[i]!;
    return only.includes(station.name) !== (JSON.stringify(station) === JSON.stringify(before));
  });
}
