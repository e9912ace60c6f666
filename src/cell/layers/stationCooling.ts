// How the shots of a station cool, from its product and its mean blow.
import { distributionMean } from "#engine/distributions/moments.ts";
import { shotCooling, type ShotCooling } from "#physics/window/shotCooling.ts";
import { slowedBy } from "#cell/delivery/continuousExtrusion.ts";
import type { Scenario, StationSpec } from "#scenario/scenario.ts";

type Cooled = Pick<StationSpec, "process" | "blow">;

/** At the melt temperature of the running rate. Undefined where material or wall are not given, or the mold temperature follows its load. */
export function stationCooling(scenario: Scenario, { process, blow }: Cooled): ShotCooling | undefined {
  if (!process) return undefined;
  const { values, ...choices } = process;
  const rate = values["delivery.plasticatingRate"];
  const slower = scenario.delivery.kind === "continuous" ? slowedBy(scenario) : 1;
  return shotCooling({
    ...choices,
    ...values,
    "station.steps.blow": distributionMean(blow),
    "delivery.matchedRate": rate && rate / slower,
  });
}

/** °C above which a part is under-cooled: the limit of the quality checks, else the demold temperature of the product. */
export const demoldLimit = ({ quality }: Scenario, { demold }: ShotCooling): number => quality?.maxDemold ?? demold;
