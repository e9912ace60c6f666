// Says what a scenario leaves unanswered because it gives no mass or no material, and which key would give it.
import { missingMass, productHome } from "#analysis/window/missingMass.ts";
import type { Scenario } from "#scenario/scenario.ts";

/** One line; none where every part has its mass and its material. */
export function leftOutWords({ stations }: Pick<Scenario, "stations">): readonly string[] {
  const unnamed = stations.filter(({ process }) => process === undefined);
  const materials = [...new Set(unnamed.map((station) => `${productHome(station)}.material`))];
  const answers: readonly (readonly [string, readonly string[]])[] = [
    ["melt in kg/h", missingMass(stations)],
    ["the process window", materials],
  ];
  const lacking = answers.filter(([, keys]) => keys.length > 0);
  if (lacking.length === 0) return [];
  const words = lacking.map(([answer, keys]) => `${answer} (give ${keys.map((key) => `\`${key}\``).join(", ")})`);
  return [`Not answered: ${words.join("; ")}.`, ""];
}
