// The assumptions for absent keys, as a list for the user.
import type { Assumption } from "#scenario/values/assumption.ts";
import { defaults, dieZoneAssumed, screwAssumed, shiftAssumed } from "#scenario/values/defaults.ts";
import type { ScenarioText } from "#scenario/reading/scenarioText.ts";
import { pathsOf, valueAt } from "#scenario/reading/pathPattern.ts";

const mayBeAbsent: readonly (string | number)[] = ["product", "calendar"];

export function assumptions(content: unknown, text: ScenarioText): readonly Assumption[] {
  const everywhere = Object.entries(defaults).flatMap(([pattern, { value, reason }]) =>
    pathsOf(content, pattern)
      .filter((path) => valueAt(content, path) === undefined)
      // Of a product or a calendar that the file does not have there is nothing to assume.
      .filter(([top = ""]) => !mayBeAbsent.includes(top) || valueAt(content, [top]) !== undefined)
      // Nor of a step that is not described.
      .filter((path) => path.length < 3 || valueAt(content, path.slice(0, -1)) !== undefined)
      .map((path) => ({ path: text.pathText(path), value: String(value), reason })),
  );
  return [...everywhere, ...shiftsAssumed(content, text), ...continuousAssumed(content, text)];
}

/** Where nothing stops there is nothing to turn the screw off for, and one mold alone passes no other. */
function continuousAssumed(content: unknown, text: ScenarioText): readonly Assumption[] {
  if (valueAt(content, ["delivery", "kind"]) !== "continuous") return [];
  const assumed = (key: string, isMeant: boolean, assumption: Omit<Assumption, "path">): readonly Assumption[] => {
    const path = ["delivery", key];
    return isMeant && valueAt(content, path) === undefined ? [{ path: text.pathText(path), ...assumption }] : [];
  };
  const stations = valueAt(content, ["stations"]);
  const count = Array.isArray(stations) ? stations.length : valueAt(content, ["stations", "count"]);
  return [
    ...assumed("dieZone", count !== 1, dieZoneAssumed),
    ...assumed("stopsScrewAfter", valueAt(content, ["stops"]) !== undefined, screwAssumed),
  ];
}

/** Without a calendar nothing is ever off shift. */
function shiftsAssumed(content: unknown, text: ScenarioText): readonly Assumption[] {
  if (valueAt(content, ["calendar"]) === undefined) return [];
  return pathsOf(content, "stops.*.shift")
    .filter((path) => valueAt(content, path) === undefined)
    .map((path) => ({
      path: text.pathText(path),
      ...shiftAssumed(valueAt(content, [...path.slice(0, -1), "by"])),
    }));
}
