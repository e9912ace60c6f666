// One row of the map of the pace: the ideal cycle at each position of one lever.
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import type { CircuitOwner } from "#analysis/ideal/idealCircuit.ts";
import { screenName } from "#report/words/tradeWords.ts";
import { readGiven, type Tried } from "./readGiven.ts";

export interface PaceRowAsked {
  readonly tried: Tried;
  /** The further settings of each cell of the row. */
  readonly cells: readonly (readonly string[])[];
}

/** Undefined where the reader refuses the settings. */
export type PaceCell =
  | {
      readonly secondsPerShot: number;
      /** Null where the molds make different numbers of parts. */
      readonly partsPerHour: number | null;
      /** Of all that set the pace together, as screens call them. */
      readonly pace: readonly string[];
      readonly kind: CircuitOwner["kind"] | "several";
    }
  | undefined;

const secondsPerHour = 3600;

export function openPaceRow({ tried, cells }: PaceRowAsked): readonly PaceCell[] {
  return cells.map((settings) => {
    const { scenario } = readGiven({ ...tried, set: [...tried.set, ...settings] });
    if (!scenario) return undefined;
    const { secondsPerShot, circuits } = idealCycle(scenario);
    const pace = circuits.filter(({ critical }) => critical);
    const [cavities, ...others] = new Set(scenario.stations.map((station) => station.cavities));
    const isEven = others.length === 0 && cavities !== undefined;
    return {
      secondsPerShot,
      partsPerHour: isEven ? (secondsPerHour / secondsPerShot) * cavities : null,
      pace: pace.map(({ name }) => screenName(name)),
      kind: (pace.length === 1 ? pace[0]!.owner?.kind : undefined) ?? "several",
    };
  });
}
