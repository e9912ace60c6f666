// The cooling time of the thickest place over the ranges of the material's values.
import { materialTable } from "#physics/materials/materialTable.ts";
import { ownMaterial } from "#physics/materials/ownMaterial.ts";
import { processWindow } from "./processWindow.ts";
import type { WindowInput } from "./windowInput.ts";

const properties = [
  "conductivity",
  "coolingDiffusivity",
  "meltTemperature",
  "moldTemperature",
  "demoldTemperature",
] as const;

export interface CoolingRange {
  /** The key that replaces the value of the material. */
  readonly key: string;
  /** SI, temperatures in °C. */
  readonly low: number;
  readonly high: number;
  readonly unit: string;
  /** Seconds at the low and at the high value, all others as they are. */
  readonly atLow: number;
  readonly atHigh: number;
}

const units = { conductivity: "W/(m K)", diffusivity: "m²/s", temperature: "°C" } as const;

/** A row for each value that the scenario leaves to the catalog; none where no cooling time can be computed. */
export function coolingRanges(input: WindowInput): readonly CoolingRange[] {
  const timeAt = (property: (typeof properties)[number], value: number) =>
    processWindow({ ...input, material: ownMaterial(input.material, { [property]: value }) }).find(
      ({ estimates }) => estimates === "cool",
    )?.value;
  return properties.flatMap((property) => {
    const { low, high } = input.material[property];
    const row = materialTable[property];
    const [atLow, atHigh] = [timeAt(property, low), timeAt(property, high)];
    // A value of the scenario has no range, and a temperature of the product replaces that of the material.
    if (atLow === undefined || atHigh === undefined || atLow === atHigh) return [];
    const key = "key" in row ? row.key : property;
    return [{ key, low, high, unit: units[row.dimension], atLow, atHigh }];
  });
}
