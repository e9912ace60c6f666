// Describes the CSV files of a folder for programs: the type, unit and meaning of every column, the seed and the version.
import type { Scenario, ScenarioCall } from "#scenario/scenario.ts";
import { variantOf } from "#scenario/variantOf.ts";
import type { ColumnSpec, TableSpec } from "./table.ts";

const fieldTypes = { text: "string", number: "number", integer: "integer", boolean: "boolean" } as const;

/** Where results come from: a scenario, or a log that has no run. */
export type RunOrigin = Pick<Scenario, "name" | "title"> &
  Partial<Pick<Scenario, "run">> & {
    /** Without a checksum where the file may be of any size. */
    readonly call?: Omit<ScenarioCall, "sha256"> & Partial<Pick<ScenarioCall, "sha256">>;
  };

export interface PackageParts {
  /** Of the run. */
  readonly name: string;
  readonly tables: readonly TableSpec[];
  readonly scenarios: readonly RunOrigin[];
  readonly version: string;
}

/**
 * A data package with table schemas, as JSON text; no time stamp, so that the same call gives the same bytes.
 * Source: Frictionless Standards, Data Package and Table Schema, version 1 (an open standard).
 */
export function dataPackage({ name, tables, scenarios, version }: PackageParts): string {
  return `${JSON.stringify(
    {
      profile: "tabular-data-package",
      name: packageName(name),
      title: scenarios.map(({ title }) => title).join("; "),
      version,
      program: "blowcell",
      scenarios: scenarios.map(describeScenario),
      resources: tables.map(resource),
    },
    undefined,
    2,
  )}\n`;
}

/** By file, checksum and settings a later run recognizes results of its own. */
function describeScenario(scenario: RunOrigin): object {
  const { name, title, call, run } = scenario;
  return {
    name,
    title,
    file: call?.file,
    sha256: call?.sha256,
    variant: variantOf(scenario),
    options: call?.options,
    run,
  };
}

/** Lower case, digits, `-`, `_` and `.`: what the standard lets a name hold. */
function packageName(name: string): string {
  return name.toLowerCase().replaceAll(/[^a-z0-9._-]+/g, "-");
}

function resource({ name, meaning, columns }: TableSpec): object {
  return {
    profile: "tabular-data-resource",
    name,
    path: `${name}.csv`,
    description: meaning,
    format: "csv",
    mediatype: "text/csv",
    encoding: "utf-8",
    dialect: { delimiter: ",", lineTerminator: "\r\n", header: true },
    schema: { fields: columns.map(field), missingValues: [""] },
  };
}

function field({ name, type, unit, meaning }: ColumnSpec): object {
  return { name, type: fieldTypes[type], description: meaning, ...(unit === undefined ? {} : { unit }) };
}
