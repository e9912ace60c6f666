// What is purged at a start or a change, and how long that takes at the screw's mean rate.
import { lawMean } from "#engine/law.ts";
import { purgeMass } from "#physics/colorChange.ts";
import type { ChangeSpec, Scenario } from "#scenario/scenario.ts";
import { shotMass } from "./shotMass.ts";

/** Seconds. */
export function purgeSeconds(kilograms: number, { stations }: Scenario): number {
  const [first] = stations;
  if (!first) return 0;
  const rate =
    first.recharge.by === "rate" ? lawMean(first.recharge.rate) : shotMass(first) / 1e6 / lawMean(first.recharge.time);
  return kilograms / rate;
}

/** Kilograms, through the manifold of one station after the other. */
export function purgeOfChange({ purge }: ChangeSpec, { stations }: Scenario): number {
  if (!purge) return 0;
  const { screw, manifold, residue } = purge;
  return purgeMass({ screw, manifold, manifolds: stations.length, residue });
}
