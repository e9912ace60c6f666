// Prints a choice, writes its files, and returns the exit code of its answer.
import type { Choice } from "#analysis/choice/choiceResult.ts";
import type { Layout } from "#analysis/choice/layout.ts";
import type { Issue } from "#foundation/issue.ts";
import { choicePage } from "#report/choice/choicePage.ts";
import { chooseAnswer } from "#report/choice/chooseAnswer.ts";
import { chooseTable, type LeftOutLayout } from "#report/tables/asked/chooseTable.ts";
import type { Options } from "#cli/call/command.ts";
import { exitCode } from "#cli/machine/exitCode.ts";
import type { Host } from "#cli/machine/host.ts";
import { version } from "#cli/machine/version.ts";
import { printResult } from "#cli/output/printResult.ts";
import { writeTables } from "#cli/output/writeTables.ts";

export interface ReportedChoice {
  readonly choice: Choice;
  /** In the order of the call, each with its warnings. */
  readonly layouts: readonly Layout[];
  readonly warnings: readonly (readonly Issue[])[];
  readonly leftOut: readonly LeftOutLayout[];
  readonly usesDefault: boolean;
  readonly folder: string;
  readonly name: string;
}

const codes: Readonly<Record<Choice["verdict"], number>> = {
  chosen: exitCode.done,
  none: exitCode.cannotWork,
  undecided: exitCode.undecided,
};

export async function reportChoice(
  { choice, layouts, warnings, leftOut, usesDefault, folder, name }: ReportedChoice,
  options: Options,
  host: Host,
): Promise<number> {
  const { units = "si" } = options;
  const answer = { choice, leftOut, usesDefault };
  const scenarios = layouts.map(({ scenario }) => scenario);
  const tables = [chooseTable(choice, leftOut)];
  printResult(
    {
      command: "choose",
      studies: scenarios.map((scenario, i) => ({ scenario, warnings: warnings[i] ?? [] })),
      tables,
      answer: () => chooseAnswer(answer, host.width, units),
    },
    options,
    host,
  );
  const said = [...new Set(warnings.flat().map(({ message, remedy }) => `${message} ${remedy}`))];
  const page = choicePage({ ...answer, version, warnings: said, units });
  await writeTables({ folder, name, tables, scenarios, page }, options, host);
  return codes[choice.verdict];
}
