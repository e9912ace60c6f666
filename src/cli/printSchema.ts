// The command `schema`: prints what a scenario file, or the result of `--json`, may hold, for editors and other programs.
import { resultSchema } from "#report/resultJson.ts";
import { tableSpecs } from "#report/tableSpecs.ts";
import { scenarioSchema } from "#scenario/scenarioSchema.ts";
import type { Act } from "./command.ts";
import { exitCode } from "./exitCode.ts";

export const printSchema: Act = (_operands, options, host) => {
  const schema = options.result === true ? resultSchema(tableSpecs) : scenarioSchema();
  host.print(`${JSON.stringify(schema, undefined, 2)}\n`);
  return exitCode.done;
};
