// Reads the scenario files of a call, prints their issues and returns the scenarios that can be run.
import type { ScenarioReading } from "#scenario/resolving/readScenario.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import type { Issue } from "#foundation/issue.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { Options } from "#cli/call/command.ts";
import { exitCodeOf, worstOf } from "#cli/machine/exitCode.ts";
import type { Host } from "#cli/machine/host.ts";
import { optionIssues } from "#cli/call/optionIssues.ts";
import { calledSettings, settingsOf, type CalledSetting } from "#cli/call/options.ts";
import { printIssues } from "#cli/output/printIssues.ts";

export interface LoadedScenario {
  readonly scenario: Scenario;
  /** The same file with further settings; undefined where they are refused. */
  readonly vary: (settings: readonly string[]) => Scenario | undefined;
  /** The text of the file, the changes by the call, and the warnings. */
  readonly text: string;
  readonly settings: readonly CalledSetting[];
  readonly issues: readonly Issue[];
}

export interface Loaded {
  /** All that could be read, in the order of the call. */
  readonly loaded: readonly LoadedScenario[];
  /** 0 where every file can be run. */
  readonly code: number;
}

export function loadScenarios(files: readonly string[], options: Options, host: Host): Loaded {
  const readings = files.map((file) => readFile(file, options, host));
  const issues = readings.flatMap((reading) => reading.issues);
  printIssues(options.quiet === true ? issues.filter(({ severity }) => severity === "error") : issues, host);
  return {
    loaded: readings.flatMap(({ scenario, text, vary, issues: found }) =>
      scenario === undefined ? [] : [{ scenario, vary, text, settings: calledSettings(options), issues: found }],
    ),
    code: worstOf(readings.map((reading) => exitCodeOf(reading.issues))),
  };
}

interface Reading extends Pick<LoadedScenario, "vary"> {
  readonly scenario?: Scenario;
  readonly text: string;
  readonly issues: readonly Issue[];
}

function readFile(file: string, options: Options, host: Host): Reading {
  const content = host.readText(file);
  if ("issue" in content) return { text: "", issues: [content.issue], vary: () => undefined };
  const folder = file.replace(/[^/\\]*$/, "");
  const { set, run } = settingsOf(options);
  const readWith = (more: readonly string[]): ScenarioReading =>
    readSettled(content.text, {
      name: scenarioName(file),
      file,
      set: [...set, ...more],
      run,
      readText: (name) => {
        const beside = host.readText(folder + name);
        return "text" in beside ? beside.text : undefined;
      },
    });
  const { scenario, issues: found } = readWith([]);
  const vary: LoadedScenario["vary"] = (settings) => readWith(settings).scenario;
  const [text, issues] = [content.text, optionIssues(found, options)];
  return { text, issues, vary, ...(scenario ? { scenario } : {}) };
}

/** The file's name without folder and ending. */
function scenarioName(file: string): string {
  const name = file.replace(/^.*[/\\]/, "");
  return name.replace(/(?<=.)\.[^.]*$/, "");
}
