// Writes the report and the CSV files of a call into one folder, and prints the folder.
import { toCsv, toCsvPieces } from "#report/tables/csv.ts";
import { dataPackage } from "#report/tables/dataPackage.ts";
import type { LongTable, Table } from "#report/tables/table.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { Options } from "#cli/call/command.ts";
import type { Host } from "#cli/machine/host.ts";
import { version } from "#cli/machine/version.ts";

export interface Output {
  readonly folder: string;
  readonly tables: readonly (Table | LongTable)[];
  readonly scenarios: readonly Scenario[];
  /** The report as one HTML file. */
  readonly page: string;
}

export async function writeTables(
  { folder, tables, scenarios, page }: Output,
  options: Options,
  host: Host,
): Promise<void> {
  await host.writeFiles(folder, [
    ...tables.map((table) => ({
      name: `${table.name}.csv`,
      text: "rows" in table ? toCsv(table) : toCsvPieces(table),
    })),
    { name: "datapackage.json", text: dataPackage(tables, scenarios, version) },
    { name: "report.html", text: page },
  ]);
  if (options.quiet !== true) host.report(`report.html and ${tables.length} CSV files are in ${folder}\n`);
}
