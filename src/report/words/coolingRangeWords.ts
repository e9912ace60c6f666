// The cooling time over the ranges of the material's values in words, for `check --range`.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import type { StationRanges } from "#analysis/window/stationRanges.ts";
import { alignedLines } from "./alignedLines.ts";
import { shown } from "./shownValue.ts";

/** One block for each group of equal stations; `all` is the number of stations. */
export function coolingRangeLines(
  groups: readonly StationRanges[],
  all: number,
  width: number,
  units: UnitSystem,
): readonly string[] {
  return groups.flatMap(({ stations, ranges }) => {
    const place = stations.length === all ? "" : `, ${stations.join(", ")}`;
    const rows = ranges.map(({ key, low, high, unit, atLow, atHigh }) => [
      `  ${key}`,
      shown(low, unit, units),
      shown(atLow, "s", units),
      shown(high, unit, units),
      shown(atHigh, "s", units),
    ]);
    return [
      `Cooling time of the thickest place over the range of the material${place}:`,
      ...alignedLines([["  value", "lowest", "time", "highest", "time"], ...rows], [1, 2, 3, 4], width),
      "",
    ];
  });
}
