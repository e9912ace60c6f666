// Prints what a command found: in words, or as JSON and nothing else; warnings go to standard error.
import type { Study } from "#analysis/study.ts";
import { resultJson } from "#report/resultJson.ts";
import type { Table } from "#report/table.ts";
import type { Options } from "./command.ts";
import type { Host } from "./host.ts";
import { printAnswer } from "./printAnswer.ts";
import { printIssues } from "./printIssues.ts";
import { version } from "./version.ts";

export interface Findings {
  readonly command: string;
  readonly studies: readonly Pick<Study, "scenario" | "warnings">[];
  readonly tables: readonly Table[];
  /** Put into words only where somebody reads them. */
  readonly answer: () => string;
}

export function printResult({ command, studies, tables, answer }: Findings, options: Options, host: Host): void {
  const warnings = studies.flatMap((study) => study.warnings);
  if (options.quiet !== true) printIssues(warnings, host);
  if (options.json !== true) return printAnswer(answer, options, host);
  host.print(resultJson({ command, version, scenarios: studies.map(({ scenario }) => scenario), warnings, tables }));
}
