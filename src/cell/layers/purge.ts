// Mass and time of the purge at a start-up or a change.
import type { TimeSpec } from "#engine/compiler/stepTable.ts";
import { purgeMass } from "#physics/screw/colorChange.ts";
import type { ChangeSpec, Scenario } from "#scenario/scenario.ts";
import { PLASTICATOR } from "#cell/words/cycleNames.ts";
import { shotMass } from "#cell/table/shotMass.ts";
import { massDistribution } from "#cell/words/tableWords.ts";

/**
 * Drawn once for the whole mass, as a recharge is for its shot. A measured recharge time is scaled by mass. Each start-up and each
 * change has its own stream, so that no purge shifts the random numbers of another purge or of the recharges.
 */
export function purgeTime(milligrams: number, stream: string, { stations }: Scenario): TimeSpec {
  const [first] = stations;
  const distribution = massDistribution(first!.recharge, milligrams);
  const isMeasured = first!.recharge.by === "time";
  return {
    distributions: [isMeasured ? { ...distribution, factor: milligrams / shotMass(first!) } : distribution],
    resource: PLASTICATOR,
    stream,
  };
}

/** Kilograms; the manifolds of the stations are purged in series. */
export function purgeOfChange({ purge }: ChangeSpec, { stations }: Scenario): number {
  if (!purge) return 0;
  const { screw, manifold, residue } = purge;
  return purgeMass({ screw, manifold, manifolds: stations.length, residue });
}
