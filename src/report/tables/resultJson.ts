// The result of a command as JSON, and the schema that says what it holds; both follow the tables.
import type { Issue } from "#foundation/issue.ts";
import { assumptionsOf } from "#report/words/assumptionWords.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { variantOf } from "#scenario/variantOf.ts";
import type { Cell, ColumnSpec, Table, TableSpec } from "./table.ts";

export interface Result {
  readonly command: string;
  readonly version: string;
  readonly scenarios: readonly Scenario[];
  readonly warnings: readonly Issue[];
  readonly tables: readonly Table[];
}

/** One object a table row, by column name; numbers are not rounded. */
export function resultJson({ command, version, scenarios, warnings, tables }: Result): string {
  const result = {
    format: 1,
    program: "blowcell",
    version,
    command,
    scenarios: scenarios.map((scenario) => {
      const { name, title, run } = scenario;
      return { name, title, variant: variantOf(scenario), run, assumptions: assumptionsOf(scenario) };
    }),
    warnings: warnings.map(({ code, path, message, remedy }) => ({ code, path, message, remedy })),
    tables: Object.fromEntries(tables.map((table) => [table.name, table.rows.map((row) => rowObject(table, row))])),
  };
  return `${safeJson(result)}\n`;
}

// Controls beyond ASCII, separators and marks of the direction of writing; JSON itself writes the others as escapes.
const unsafe = /[\u007f-\u009f\u2028\u2029\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu;

/** JSON that a terminal shows as it is: the same values, with characters that would act on the terminal as escapes. */
function safeJson(value: object): string {
  return JSON.stringify(value, undefined, 2).replaceAll(
    unsafe,
    (character) => `\\u${character.codePointAt(0)!.toString(16).padStart(4, "0")}`,
  );
}

function rowObject({ columns }: Table, row: readonly Cell[]): object {
  return Object.fromEntries(columns.map(({ name }, i) => [name, row[i] ?? null]));
}

/** JSON Schema, draft 2020-12, of what `--json` prints; a table is there only where the command makes it. */
export function resultSchema(specs: readonly TableSpec[]): object {
  const text = { type: "string" };
  const assumption = { type: "object", required: ["text", "key"], properties: { text, key: text } };
  const assumptions = {
    description: "What the scenario does not enter, so that the result is a best case.",
    type: "array",
    items: { ...assumption, additionalProperties: false },
  };
  return {
    $schema: "https://json-schema.org/draft/2020-12/schema",
    title: "Result of a blowcell command",
    type: "object",
    required: ["format", "program", "version", "command", "scenarios", "warnings", "tables"],
    properties: {
      format: { const: 1 },
      program: { const: "blowcell" },
      version: text,
      command: text,
      scenarios: {
        type: "array",
        items: {
          type: "object",
          required: ["name", "title", "variant", "run", "assumptions"],
          properties: { name: text, title: text, variant: text, run: { type: "object" }, assumptions },
        },
      },
      warnings: {
        type: "array",
        items: {
          type: "object",
          required: ["code", "path", "message", "remedy"],
          properties: { code: text, path: text, message: text, remedy: text },
        },
      },
      tables: { type: "object", properties: Object.fromEntries(specs.map(tableSchema)), additionalProperties: false },
    },
    additionalProperties: false,
  };
}

function tableSchema({ name, meaning, columns, takesMore }: TableSpec): readonly [string, object] {
  const items = {
    type: "object",
    required: columns.map((column) => column.name),
    properties: Object.fromEntries(columns.map((column) => [column.name, columnSchema(column)])),
    additionalProperties: takesMore === true,
  };
  return [name, { description: meaning, type: "array", items }];
}

function columnSchema({ type, meaning, unit }: ColumnSpec): object {
  const plain = { text: "string", number: "number", integer: "integer", boolean: "boolean" } as const;
  return { type: [plain[type], "null"], description: unit === undefined ? meaning : `${meaning} Unit: ${unit}.` };
}
