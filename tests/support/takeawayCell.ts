// Cells of one product with a takeaway, described by a few numbers.
import type { Distribution } from "#engine/distributions/distribution.ts";
import type { Scenario, ServerSpec, StationSpec } from "#scenario/scenario.ts";
import { fixedCell, type FixedCell } from "./fixedCell.ts";

export const always = (value: number): Distribution => ({ kind: "fixed", value });
export const exponential = (mean: number): Distribution => ({ kind: "exponential", mean });

export function server(name: string, time: Distribution, more: Partial<ServerSpec> = {}): ServerSpec {
  const alone = { places: 1, buffer: 0, by: "machine", rejects: 0 } as const;
  return { name, time, ...alone, ...more };
}

export function takeawayCell(
  cell: FixedCell,
  takeaway: readonly ServerSpec[],
  more: Partial<Scenario> & { readonly cavities?: number; readonly station?: Partial<StationSpec> } = {},
): Scenario {
  const { cavities = 1, station, ...rest } = more;
  const made = fixedCell(cell);
  const stations = made.stations.map((each) => ({ ...each, cavities, ...station }));
  return { ...made, stations, ...(takeaway.length > 0 ? { takeaway } : {}), ...rest };
}

/** A mold that only cools: the first stage of a saturated line. */
export function saturatedMold(
  cool: Distribution,
  takeaway: readonly ServerSpec[],
  run: Partial<Scenario["run"]> = {},
): Scenario {
  const idle = { recharge: 0, drop: 0, close: 0, cool: 0, remove: 0 };
  const cell = takeawayCell({ stations: [idle], shift: 0 }, takeaway, { station: { cool } });
  return { ...cell, run: { ...cell.run, ...run } };
}
