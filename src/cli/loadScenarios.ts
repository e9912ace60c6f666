// Reads the scenario files that a call names, tells everything that is wrong with them, and hands over those that can be run.
import type { Issue } from "#foundation/issue.ts";
import { readScenario } from "#scenario/readScenario.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { Options } from "./command.ts";
import { exitCodeOf, worstOf } from "./exitCode.ts";
import type { Host } from "./host.ts";
import { settingsOf } from "./options.ts";
import { printIssues } from "./printIssues.ts";

export interface Loaded {
  /** All that could be read, in the order of the call. */
  readonly scenarios: readonly Scenario[];
  /** 0 where every file can be run. */
  readonly code: number;
}

export function loadScenarios(files: readonly string[], options: Options, host: Host): Loaded {
  const readings = files.map((file) => readFile(file, options, host));
  const issues = readings.flatMap((reading) => reading.issues);
  printIssues(options.quiet === true ? issues.filter(({ severity }) => severity === "error") : issues, host);
  return {
    scenarios: readings.flatMap(({ scenario }) => (scenario === undefined ? [] : [scenario])),
    code: worstOf(readings.map((reading) => exitCodeOf(reading.issues))),
  };
}

interface Reading {
  readonly scenario?: Scenario;
  readonly issues: readonly Issue[];
}

function readFile(file: string, options: Options, host: Host): Reading {
  const found = host.readText(file);
  if ("issue" in found) return { issues: [found.issue] };
  const folder = file.replace(/[^/\\]*$/, "");
  return readScenario(found.text, {
    name: scenarioName(file),
    file,
    set: settingsOf(options),
    readText: (name) => {
      const beside = host.readText(folder + name);
      return "text" in beside ? beside.text : undefined;
    },
  });
}

/** The file's name without folder and ending. */
export function scenarioName(file: string): string {
  const name = file.replace(/^.*[/\\]/, "");
  return name.replace(/(?<=.)\.[^.]*$/, "");
}
