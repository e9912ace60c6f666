// A material of the process window: one datum for each property of the material table.
import type { Datum } from "./datum.ts";
import type { MaterialName, materialTable } from "./materialTable.ts";

type Table = typeof materialTable;

export type MaterialProperty = keyof Table;

/** Properties that every material of the table has. */
export type CommonProperty = {
  [Property in MaterialProperty]: MaterialName extends keyof Table[Property]["of"] ? Property : never;
}[MaterialProperty];

interface Names {
  /** As a scenario names it. */
  readonly name: string;
  readonly fullName: string;
}

export type Material = Names & {
  readonly [Property in CommonProperty]: Datum;
} & {
  readonly [Property in Exclude<MaterialProperty, CommonProperty>]?: Datum;
};
