// The melt that passes through each station at mean times.
import { hasRole, shotRoles } from "#cell/words/cellTable.ts";
import { shotMass } from "#cell/table/shotMass.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { IdealCycle } from "#analysis/ideal/idealCycle.ts";
import { missingMass } from "./missingMass.ts";

const milligramsPerKilogram = 1e6;

interface MeltFlow {
  /** kg/s through the screw, waits included. */
  readonly total: number;
  /** Share of it by station. */
  readonly shares: ReadonlyMap<string, number>;
}

/** The shots of one period over its time; for a bound one shot of each station. Undefined where masses are not given. */
export function meltByStation({ stations }: Scenario, ideal: IdealCycle): MeltFlow | undefined {
  if (missingMass(stations).length > 0) return undefined;
  const masses = new Map(stations.map((station) => [station.name, shotMass(station)]));
  const drops = ideal.schedule.filter((step) => hasRole(step, ...shotRoles)).map(({ station }) => station);
  const shots = drops.length > 0 ? drops : [...masses.keys()];
  const melt = (names: readonly (string | null)[]) =>
    names.reduce((sum, name) => sum + (masses.get(name ?? "") ?? 0), 0);
  const sum = melt(shots);
  return {
    total: sum / shots.length / milligramsPerKilogram / ideal.secondsPerShot,
    shares: new Map([...masses.keys()].map((name) => [name, melt(shots.filter((shot) => shot === name)) / sum])),
  };
}
