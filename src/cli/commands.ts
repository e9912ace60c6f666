// The commands that are built, and by name those that are planned, so that nothing asked for is quietly ignored.
import type { CommandSpec } from "./command.ts";
import { verboseOption } from "./options.ts";

export const builtCommands: readonly CommandSpec[] = [
  {
    name: "schema",
    operands: "",
    meaning: "print the JSON Schema of a scenario file, for editors that complete and check while you type",
    example: "blowcell schema > scenario.schema.json",
    options: [verboseOption],
    load: async () => (await import("./printSchema.ts")).printSchema,
  },
];

/** Refused by name and absent from --help. */
export const plannedCommands: readonly string[] = [
  "check",
  "run",
  "compare",
  "sweep",
  "merge",
  "promise",
  "fit",
  "match",
  "page",
];
export const plannedOptions: readonly string[] = [
  "--precision",
  "--jobs",
  "--units",
  "--events",
  "--best",
  "--worthwhile",
  "--excel",
  "--vary",
  "--shard",
];
