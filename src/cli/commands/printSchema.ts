// The command `schema`: prints what a scenario file, or the result of `--json`, may hold, for editors and other programs.
import { resultSchema } from "#report/tables/resultJson.ts";
import { explanationSpec } from "#report/explain/explainTable.ts";
import { tableSpecs } from "#report/tables/tableSpecs.ts";
import { scenarioSchema } from "#scenario/keys/scenarioSchema.ts";
import type { Act } from "#cli/call/command.ts";
import { exitCode } from "#cli/machine/exitCode.ts";

export const printSchema: Act = (_operands, options, host) => {
  const schema = options.result === true ? resultSchema([...tableSpecs, explanationSpec]) : scenarioSchema();
  host.print(`${JSON.stringify(schema, undefined, 2)}\n`);
  return exitCode.done;
};
