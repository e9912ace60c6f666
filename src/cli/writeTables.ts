// Writes tables as the CSV files of a run into one folder, and says where they are.
import { toCsv, toCsvPieces } from "#report/csv.ts";
import { dataPackage } from "#report/dataPackage.ts";
import type { LongTable, Table } from "#report/table.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { Options } from "./command.ts";
import type { Host } from "./host.ts";
import { version } from "./version.ts";

export function writeTables(
  folder: string,
  tables: readonly (Table | LongTable)[],
  scenarios: readonly Scenario[],
  options: Options,
  host: Host,
): void {
  host.writeFiles(folder, [
    ...tables.map((table) => ({
      name: `${table.name}.csv`,
      text: "rows" in table ? toCsv(table) : toCsvPieces(table),
    })),
    { name: "datapackage.json", text: dataPackage(tables, scenarios, version) },
  ]);
  if (options.quiet !== true) host.tell(`${tables.length} CSV files are in ${folder}\n`);
}
