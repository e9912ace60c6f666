// The grid of the map: which positions of two levers it shows, and what it says.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { textInUnits } from "#report/words/textInUnits.ts";
import type { Lever } from "#page/trial/lever.ts";
import type { PaceCell } from "#page/trial/openPaceRow.ts";

/** What does not depend on runs and units. */
export type IdealGrid = Omit<PaceGrid, "units" | "simulated">;

export interface PaceGrid {
  readonly units: UnitSystem;
  readonly x: Lever;
  readonly y: Lever;
  /** Positions of the levers. */
  readonly across: readonly number[];
  readonly down: readonly number[];
  /** Undefined where it is not computed yet. */
  readonly rows: readonly (readonly PaceCell[] | undefined)[];
  /** Settings of each cell. */
  readonly settings: readonly (readonly (readonly string[])[])[];
  /** Good parts an hour of the cells that were run. */
  readonly simulated: readonly (readonly (number | undefined)[])[];
  /** The present cell. */
  readonly at: { readonly x: number; readonly y: number };
}

/** Of one position of a lever. */
export const positionWords = ({ positions }: Lever, at: number, units: UnitSystem): string =>
  textInUnits(positions[at]!.words, units);

/** So many positions over the whole way, the present one among them. */
export function mapAxis({ positions }: Lever, present: number, count: number): readonly number[] {
  const last = positions.length - 1;
  if (last < count) return [...positions.keys()];
  const even = Array.from({ length: count }, (_, i) => Math.round((i * last) / (count - 1)));
  const nearest = even.reduce((best, each) => (Math.abs(each - present) < Math.abs(best - present) ? each : best));
  return even.map((each) => (each === nearest ? present : each));
}

/** "The present cell: each station sets the pace, 6.17 s a shot. On the map …" */
export function mapWords({ rows, at }: PaceGrid): string {
  const cells = rows.flatMap((row) => row ?? []).flatMap((cell) => cell ?? []);
  const present = rows[at.y]?.[at.x];
  const names = [...new Set(cells.map(({ pace }) => pace.join(" and ")))];
  const here = present ? `Now ${present.pace.join(" and ")}, ${present.secondsPerShot.toFixed(2)} s a shot. ` : "";
  return `${here}On this map the pace is set by: ${names.join("; ")}.`;
}
