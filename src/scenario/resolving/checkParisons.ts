// Checks that the length of the next parison is known before it grows, in continuous extrusion.
import type { Resolution } from "./resolution.ts";
import type { StationSpec } from "#scenario/scenario.ts";

/** With different parisons, only a rotation determines the station of the next one. */
export function checkParisons(
  stations: readonly (StationSpec | undefined)[],
  { draft, has, report }: Resolution,
): void {
  if (draft.delivery?.kind !== "continuous" || draft.valve?.dispatch === "alternate") return;
  const parisons = stations.flatMap((station) => (station ? [parisonOf(station)] : []));
  if (new Set(parisons).size <= 1) return;
  report({
    code: "next-unknown",
    message: "The molds take different parisons, and the dispatch rule does not fix whose turn is next.",
    expected: "`valve.dispatch: alternate`, or parisons that are alike",
    remedy: "Write `valve: { dispatch: alternate }`.",
    path: has(["valve", "dispatch"]) ? ["valve", "dispatch"] : ["stations"],
    ...(has(["valve", "dispatch"]) ? {} : { at: "key" }),
  });
}

/** How much melt, and how fast. */
function parisonOf({ cavities, partMass, flashMass, recharge }: StationSpec): string {
  const isWeighed = partMass !== undefined && flashMass !== undefined;
  const shot = isWeighed ? cavities * (Math.round(partMass * 1e6) + Math.round(flashMass * 1e6)) : null;
  return JSON.stringify([shot, recharge]);
}
