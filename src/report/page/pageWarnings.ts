// What stands right below the answer of a report: values outside the process window, then warnings of the scenario.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { windowWarnings } from "#report/tables/windowWords.ts";
import type { ReportedScenario } from "./reported.ts";

/** Melt that decomposes spoils every part, so it comes first. */
const first = "time at heat";

export function pageWarnings({ study, issues }: ReportedScenario, units: UnitSystem): readonly string[] {
  const { windows, spreads, scenario } = study;
  // The heading of the terminal ends with a colon, and empty lines separate its groups.
  const lines = windowWarnings(windows, spreads, scenario.stations.length, units)
    .map((line) => line.trim())
    .filter((line) => line !== "" && !line.endsWith(":"));
  const isFirst = (line: string): boolean => line.includes(first);
  const own = issues
    .filter(({ severity }) => severity === "warning")
    .map(({ path, message, remedy }) => `${path === "" ? "" : `${path}: `}${message} ${remedy}`);
  return [...lines.filter(isFirst), ...lines.filter((line) => !isFirst(line)), ...own];
}
