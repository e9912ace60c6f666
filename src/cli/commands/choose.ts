// The command `choose`, and `sweep --best`: finds the best layout with a guarantee, by a sequential selection.
import { concludeChoice } from "#analysis/choice/concludeChoice.ts";
import type { Layout } from "#analysis/choice/layout.ts";
import type { Need } from "#analysis/choice/observed.ts";
import { comparableScenarios, overOneSpan } from "#analysis/study/comparison.ts";
import { standstillIssue } from "#analysis/study/standstillIssue.ts";
import type { SettledScenario } from "#analysis/statistics/warmUpSearch.ts";
import type { Issue } from "#foundation/issue.ts";
import type { Act, Options } from "#cli/call/command.ts";
import { nameIssues } from "#cli/call/nameIssues.ts";
import { callTexts, runTexts } from "#cli/call/options.ts";
import { parseVariant } from "#cli/call/variants.ts";
import { runName } from "#cli/call/runName.ts";
import { chooseIssue } from "#cli/choose/chooseIssues.ts";
import { findCriterion } from "#cli/choose/findCriterion.ts";
import { askTexts, readAsk } from "#cli/choose/readAsk.ts";
import { reportChoice } from "#cli/choose/reportChoice.ts";
import { conductChoice, conductTrials } from "#cli/labor/conductChoice.ts";
import { conductWarmUp } from "#cli/labor/conductStudy.ts";
import { withLabor } from "#cli/labor/withLabor.ts";
import { exitCodeOf } from "#cli/machine/exitCode.ts";
import { folderIssues } from "#cli/output/earlierRun.ts";
import { printIssues } from "#cli/output/printIssues.ts";
import { scenarioName } from "./loadScenarios.ts";
import { readLayouts } from "./readLayouts.ts";

export const choose: Act = (files, options, host) => {
  const ask = readAsk(options);
  const isAsk = "confidence" in ask;
  const need = isAsk ? ask.need : null;
  const reading = readingOptions(options, need);
  const read = readLayouts(files, reading, host);
  const issues = [...nameIssues(options), ...bestIssues(options), ...(isAsk ? [] : ask), ...read.issues];
  const refused = issues.filter(({ severity }) => severity === "error");
  printIssues(options.quiet === true ? refused : issues, host);
  if (refused.length > 0 || !isAsk) return exitCodeOf(issues);
  const layouts = spanned(read.layouts, options, need);
  const scenarios = layouts.map(({ scenario }) => scenario);
  const name = nameOf(files, options);
  const folder = options.out ?? `reports/${name}`;
  const inTheWay = folderIssues(folder, scenarios, options, host);
  printIssues(inTheWay, host);
  if (inTheWay.length > 0) return exitCodeOf(inTheWay);
  return withLabor(options, host, async (labor, stages) => {
    const settled: SettledScenario[] = [];
    for (const scenario of scenarios) settled.push(await conductWarmUp(scenario, labor, stages));
    const compared = overOneSpan(settled).map(({ scenario }, i) => ({ ...layouts[i]!, scenario }));
    const trials = await conductTrials(compared, labor);
    const stuck = trials.flatMap((trial, i) => (trial.standstill ? [standstillIssue(scenarios[i]!, trial)] : []));
    const found =
      stuck.length === trials.length
        ? stuck
        : findCriterion(compared, trials, { by: options.by, worthwhile: ask.worthwhile });
    if (!("criterion" in found)) {
      printIssues(found, host);
      return exitCodeOf(found);
    }
    const { confidence, mostReplications } = ask;
    const goal = { ...found, confidence, need, mostReplications };
    const choice = concludeChoice(await conductChoice(compared, trials, goal, { labor, stages }));
    const warnings = settled.map((each) => each.warnings);
    return reportChoice(
      {
        choice,
        layouts: compared,
        warnings,
        leftOut: read.leftOut,
        usesDefault: !ask.worthwhile.isGiven,
        folder,
        name,
      },
      options,
      host,
    );
  });
};

/** The cap of replications is no number of the scenario, and a need gives the length of a run. */
function readingOptions(given: Options, need: Need | null): Options {
  const { replications: _, precision: __, ...options } = given;
  return need === null ? options : { ...options, length: `${need.within} s` };
}

/** With one seed and length, so that all share random numbers; for a need all of the time counts. */
function spanned(layouts: readonly Layout[], options: Options, need: Need | null): readonly Layout[] {
  const compared = comparableScenarios(layouts.map(({ scenario }) => scenario));
  return compared.map((scenario, i) => {
    const { precision: _, ...run } = scenario.run;
    const call = scenario.call && {
      ...scenario.call,
      options: [...runTexts(readingOptions(options, null)), ...askTexts(options)],
    };
    const counted = need === null ? run : { ...run, warmup: 0 };
    return { ...layouts[i]!, scenario: { ...scenario, ...(call ? { call } : {}), run: counted } };
  });
}

/** More names would make the name of the folder too long. */
const mostNamed = 3;

function nameOf(files: readonly string[], options: Options): string {
  const texts = [...callTexts(readingOptions(options, null)), ...(options.vary ?? []), ...askTexts(options)];
  const [first, ...others] = [
    ...files.map(scenarioName),
    ...(options.variant ?? []).map((text) => parseVariant(text).name),
  ];
  const named = others.length > mostNamed ? [`${others.length}-layouts`] : others;
  const base = [first, ...named, "choose"].join("-").replaceAll(/[\s;:,]+/gu, "-");
  return runName(base, texts, options.name?.trim());
}

/** Only `sweep --best` can have them. */
function bestIssues({ shard, precision }: Options): readonly Issue[] {
  const remedy: Readonly<Record<string, string>> = {
    "--shard": "Run all points in one call: a selection needs them together.",
    "--precision": "Leave it out: the replications follow from --confidence and --worthwhile.",
  };
  return Object.entries({ "--shard": shard, "--precision": precision }).flatMap(([option, value]) =>
    value === undefined
      ? []
      : [chooseIssue("best-whole", `${option} does not go with --best.`, { option, value, remedy: remedy[option]! })],
  );
}

/** Options of a choice in a sweep without `--best`. */
export function aloneIssues({ by, worthwhile, need, chance, confidence }: Options): readonly Issue[] {
  const given = Object.entries({ by, worthwhile, need, chance, confidence });
  return given.flatMap(([key, value]) =>
    value === undefined
      ? []
      : [chooseIssue("best-alone", `--${key} stands without --best.`, { option: `--${key}`, value })],
  );
}
