// Writes the report and the CSV files of a call into one folder, and prints the folder.
import { toCsv, toCsvPieces } from "#report/tables/csv.ts";
import { dataPackage } from "#report/tables/dataPackage.ts";
import type { LongTable, Table } from "#report/tables/table.ts";
import { withVariants } from "#report/tables/variantColumn.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { Options } from "#cli/call/command.ts";
import type { OutputFile } from "#cli/machine/writer.ts";
import type { Host } from "#cli/machine/host.ts";
import { plainText } from "#foundation/plainText.ts";
import { version } from "#cli/machine/version.ts";
import { changedFiles, earlierRun } from "./earlierRun.ts";

export interface Output {
  readonly folder: string;
  /** Of the run. */
  readonly name: string;
  readonly tables: readonly (Table | LongTable)[];
  readonly scenarios: readonly Scenario[];
  /** The report as one HTML file. */
  readonly page: string;
  /** Files beside the tables. */
  readonly others?: readonly OutputFile[];
}

/** The folder may be written to, as `folderIssues` says. */
export async function writeTables(
  { folder, name: runName, tables: plain, scenarios, page, others = [] }: Output,
  options: Options,
  host: Host,
): Promise<void> {
  const tables = withVariants(plain, scenarios);
  const files = [
    ...tables.map((table) => ({
      name: `${table.name}.csv`,
      text: "rows" in table ? toCsv(table) : toCsvPieces(table),
    })),
    { name: "datapackage.json", text: dataPackage({ name: runName, tables, scenarios, version }) },
    { name: "report.html", text: page },
    ...others,
  ];
  const earlier = earlierRun(folder, host);
  const obsolete = (earlier?.tables ?? []).filter((table) => !files.some(({ name }) => name === table));
  await host.writeFiles(folder, files, obsolete);
  if (options.quiet === true) return;
  const changed = earlier === undefined || options.replace === true ? [] : changedFiles(earlier, scenarios);
  const replaced = changed.length === 0 ? "" : `, in place of those before ${changed.join(" and ")} changed`;
  host.report(`${plainText(`report.html and ${csvWords(tables)} are in ${folder}${replaced}`)}\n`);
}

function csvWords(tables: Output["tables"]): string {
  return tables.length === 1 ? `${tables[0]!.name}.csv` : `${tables.length} CSV files`;
}
