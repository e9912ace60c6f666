// The input of a report: scenario file, seed, length of the run, and warnings.
import { formatQuantity } from "#foundation/formatQuantity.ts";
import type { Issue } from "#foundation/issue.ts";
import type { Section } from "./htmlPage.ts";
import { element, type Child } from "#report/charts/markup.ts";
import type { Placing, ReportedScenario } from "./reported.ts";

export function inputSection({ study, text, settings, issues }: ReportedScenario, { id, of }: Placing): Section {
  const { scenario, replications } = study;
  const { length, warmup, seed } = scenario.run;
  const time = (value: number): string => formatQuantity(value, "time", { digits: 3 });
  const facts: readonly (readonly [string, string])[] = [
    ["Scenario", scenario.name],
    ["Title", scenario.title],
    ["Seed", seed],
    [
      "Replications",
      `${replications} of ${time(length)}, warm-up of ${warmup === "auto" ? "0 s" : time(warmup)} not counted`,
    ],
    ...settings.map(({ option, text: value }) => [`Set by ${option}`, value] as const),
  ];
  return {
    id: `${id}-input`,
    heading: `Input${of}`,
    body: [
      element("dl", {}, ...facts.map(([name, value]) => [element("dt", {}, name), element("dd", {}, value)])),
      ...warnings(issues),
      element("pre", { tabindex: "0", role: "region", "aria-label": `Scenario file of ${scenario.name}` }, text),
    ],
  };
}

function warnings(issues: readonly Issue[]): readonly Child[] {
  if (issues.length === 0) return [element("p", {}, "Reading the file gave no warnings.")];
  const items = issues.map(({ severity, path, message, remedy }) =>
    element("li", {}, element("strong", {}, severity), ` ${path === "" ? "" : `${path}: `}${message} ${remedy}`),
  );
  return [element("ul", {}, ...items)];
}
