// Reads the scenario files of a call, prints their issues and returns the scenarios that can be run.
import type { ScenarioReading } from "#scenario/resolving/readScenario.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import type { Issue } from "#foundation/issue.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { Options } from "#cli/call/command.ts";
import { checksum } from "#cli/machine/checksum.ts";
import { exitCodeOf, worstOf } from "#cli/machine/exitCode.ts";
import type { Host } from "#cli/machine/host.ts";
import { nameIssues } from "#cli/call/nameIssues.ts";
import { orderIssues } from "#cli/call/orderOptions.ts";
import { optionIssues } from "#cli/call/optionIssues.ts";
import { calledSettings, runTexts, settingsOf, shownSettings, type CalledSetting } from "#cli/call/options.ts";
import { parseVariant, variantIssues, type Variant } from "#cli/call/variants.ts";
import { printIssues } from "#cli/output/printIssues.ts";

export interface LoadedScenario {
  readonly scenario: Scenario;
  /** The same file with further settings; undefined where they are refused. */
  readonly vary: (settings: readonly string[]) => Scenario | undefined;
  /** The text of the file, the changes by the call, and the warnings. */
  readonly text: string;
  /** Texts of the files that it names, by name. */
  readonly beside: ReadonlyMap<string, string>;
  readonly settings: readonly CalledSetting[];
  readonly issues: readonly Issue[];
}

export interface Loaded {
  /** All that could be read: the files in the order of the call, then the variants of each. */
  readonly loaded: readonly LoadedScenario[];
  /** 0 where every file can be run. */
  readonly code: number;
}

export function loadScenarios(files: readonly string[], options: Options, host: Host): Loaded {
  const variants = (options.variant ?? []).map(parseVariant);
  const bases = files.map((file) => readFile({ file, name: scenarioName(file) }, options, host));
  const varied = files.flatMap((file, i) =>
    variants.map((variant) => {
      const name = files.length === 1 ? variant.name : `${scenarioName(file)} ${variant.name}`;
      return withoutKnown(readFile({ file, name, variant }, options, host), bases[i]!, name);
    }),
  );
  const readings = [...bases, ...varied];
  const issues = [
    ...nameIssues(options),
    ...orderIssues(options),
    ...variantIssues(variants),
    ...readings.flatMap((reading) => reading.issues),
  ];
  printIssues(options.quiet === true ? issues.filter(({ severity }) => severity === "error") : issues, host);
  return {
    loaded: readings.flatMap(({ scenario, text, beside, vary, variant, issues: found }) => {
      if (scenario === undefined) return [];
      const settings = [
        ...calledSettings(options),
        ...(variant?.set ?? []).map((set) => ({ option: "--variant", text: set })),
      ];
      return [{ scenario, vary, text, beside, settings, issues: found }];
    }),
    code: worstOf([exitCodeOf(issues), ...readings.map((reading) => exitCodeOf(reading.issues))]),
  };
}

export interface Reading extends Pick<LoadedScenario, "vary" | "text" | "beside"> {
  readonly scenario?: Scenario;
  readonly variant?: Variant | undefined;
  readonly issues: readonly Issue[];
}

interface Wanted {
  readonly file: string;
  readonly name: string;
  readonly variant?: Variant;
}

export function readFile({ file, name, variant }: Wanted, options: Options, host: Host): Reading {
  const content = host.readText(file);
  const beside = new Map<string, string>();
  if ("issue" in content) return { text: "", beside, issues: [content.issue], vary: () => undefined };
  const folder = file.replace(/[^/\\]*$/, "");
  const { set, run } = settingsOf(options);
  const readWith = (more: readonly string[]): ScenarioReading =>
    readSettled(content.text, {
      name,
      file,
      set: [...set, ...(variant?.set ?? []), ...more],
      run,
      readText: (other) => {
        const read = host.readText(isAbsolute(other) ? other : folder + other);
        if ("issue" in read) return undefined;
        beside.set(other, read.text);
        return read.text;
      },
    });
  const { scenario, issues: found } = readWith([]);
  const vary: LoadedScenario["vary"] = (settings) => readWith(settings).scenario;
  const [text, issues] = [content.text, optionIssues(found, options, variant)];
  if (!scenario) return { text, beside, issues, vary };
  const call = {
    file: file.slice(folder.length),
    sha256: checksum(text),
    settings: [...shownSettings(options), ...(variant?.set ?? [])],
    options: runTexts(options),
  };
  return { text, beside, vary, variant, scenario: { ...scenario, call }, issues };
}

/** What the file itself causes is reported once; the rest names the variant. */
function withoutKnown({ issues, ...reading }: Reading, base: Reading, name: string): Reading {
  const known = new Set(base.issues.map((issue) => JSON.stringify(issue)));
  const own = issues.filter((issue) => !known.has(JSON.stringify(issue)));
  return {
    ...reading,
    issues: own.map((issue) => ({ ...issue, message: `With variant "${name}": ${issue.message}` })),
  };
}

const isAbsolute = (file: string): boolean => /^(?:[/\\]|[a-z]:)/iu.test(file);

/** The file's name without folder and ending. */
export function scenarioName(file: string): string {
  const name = file.replace(/^.*[/\\]/, "");
  return name.replace(/(?<=.)\.[^.]*$/, "");
}
