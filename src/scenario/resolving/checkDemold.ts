// Checks that a limit of the demold temperature can be judged at every station and lies between mold and melt.
import { formatQuantity } from "#foundation/formatQuantity.ts";
import { completeInput } from "#physics/window/windowInput.ts";
import type { StationSpec } from "#scenario/scenario.ts";
import type { Finding } from "#scenario/values/finding.ts";
import type { Resolution } from "./resolution.ts";
import { kelvin } from "./windowNumber.ts";

type Fault = Pick<Finding, "code" | "message" | "expected" | "remedy">;

export function checkDemold(stations: readonly (StationSpec | undefined)[], { draft, report }: Resolution): void {
  const limit = draft.quality?.maxDemold;
  if (limit === undefined) return;
  for (const station of stations) {
    const fault = station && faultOf(station, limit - kelvin);
    if (!fault) continue;
    report({ ...fault, path: ["quality", "maxDemold"] });
    return;
  }
}

function faultOf({ name, process }: StationSpec, limit: number): Fault | undefined {
  if (process?.values["product.wall.thickest"] === undefined) {
    return {
      code: "demold-unknown",
      message: `How the parts of ${name} cool is not known.`,
      expected: "`product.material` and `product.wall.thickest`",
      remedy: "Give both, or delete `maxDemold`.",
    };
  }
  if (process.values["station.moldResistance"] !== undefined) {
    return {
      code: "demold-mold-varies",
      message: `The mold temperature of ${name} depends on the heat load, so no single time cools its parts.`,
      expected: "`maxDemold` without `moldResistance`",
      remedy: "Give `moldTemperature` as it is at the running rate, and delete `moldResistance`.",
    };
  }
  return outsideOf(completeInput({ material: process.material, ...process.values }), limit);
}

function outsideOf(input: ReturnType<typeof completeInput>, limit: number): Fault | undefined {
  const coldest = Math.max(
    input["product.moldTemperature"],
    input["product.insideAir.transfer"] === undefined ? -Infinity : input["product.insideAir.temperature"],
  );
  const melt = input["product.meltTemperature"];
  if (limit > coldest && limit < melt) return undefined;
  const shown = (celsius: number): string => formatQuantity(celsius + kelvin, "temperature", { digits: 4 });
  return {
    code: "demold-outside",
    message: `A limit of ${shown(limit)} is not between mold or inside air of ${shown(coldest)} and melt of ${shown(melt)}.`,
    expected: `above ${shown(coldest)} and below ${shown(melt)}`,
    remedy: "Write a temperature between them, such as the demold temperature of the product.",
  };
}
