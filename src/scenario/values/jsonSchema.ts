// A JSON Schema, or a part of one, as plain data.

export type JsonSchema = Readonly<Record<string, unknown>>;
