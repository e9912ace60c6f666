// What stands right below the answer of a report: values outside the process window, warnings of the scenario, unusual values.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { windowWarnings } from "#report/tables/windowWords.ts";
import type { ReportedScenario } from "./reported.ts";

export interface PageWarnings {
  /** The most important first. */
  readonly warnings: readonly string[];
  /** Values that are unusual, but may be right. */
  readonly unusual: readonly string[];
}

/** Melt that decomposes spoils every part, so it comes first. */
const first = "time at heat";

export function pageWarnings({ study, issues }: ReportedScenario, units: UnitSystem): PageWarnings {
  const { spreads, scenario } = study;
  const linesOf = (isPractice: boolean): readonly string[] => {
    const windows = study.windows.map((each) => ({
      ...each,
      rows: each.rows.filter((row) => row.isPractice === isPractice),
    }));
    const lines = windowWarnings(windows, isPractice ? [] : spreads, scenario.stations.length, units);
    // The heading of the terminal ends with a colon, and empty lines separate its groups.
    return lines
      .map((line) => line.trim())
      .filter((line) => line !== "" && !line.endsWith(":"))
      .map((line) => `${line.charAt(0).toUpperCase()}${line.slice(1)}`);
  };
  const outside = linesOf(false);
  const isFirst = (line: string): boolean => line.toLowerCase().includes(first);
  const own = issues
    .filter(({ severity }) => severity === "warning")
    .map(({ path, message, remedy }) => `${path === "" ? "" : `${path}: `}${message} ${remedy}`);
  return {
    warnings: [...outside.filter(isFirst), ...outside.filter((line) => !isFirst(line)), ...own],
    unusual: linesOf(true),
  };
}
