// Prints the result of a command in words or as JSON; warnings go to standard error.
import type { Study } from "#analysis/study/study.ts";
import { resultJson } from "#report/tables/resultJson.ts";
import type { Table } from "#report/tables/table.ts";
import { withVariants } from "#report/tables/variantColumn.ts";
import type { Options } from "#cli/call/command.ts";
import type { Host } from "#cli/machine/host.ts";
import { printAnswer } from "./printAnswer.ts";
import { printIssues } from "./printIssues.ts";
import { version } from "#cli/machine/version.ts";

export interface Findings {
  readonly command: string;
  readonly studies: readonly Pick<Study, "scenario" | "warnings">[];
  readonly tables: readonly Table[];
  /** Called only when the words are printed. */
  readonly answer: () => string;
}

export function printResult({ command, studies, tables, answer }: Findings, options: Options, host: Host): void {
  const warnings = studies.flatMap((study) => study.warnings);
  if (options.quiet !== true) printIssues(warnings, host);
  if (options.json !== true) return printAnswer(answer, options, host);
  const scenarios = studies.map(({ scenario }) => scenario);
  host.print(resultJson({ command, version, scenarios, warnings, tables: withVariants(tables, scenarios) }));
}
