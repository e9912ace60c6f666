// The command `schema`: prints what a scenario file may hold, for editors and other programs.
import { scenarioSchema } from "#scenario/scenarioSchema.ts";
import type { Act } from "./command.ts";
import { exitCode } from "./exitCode.ts";

export const printSchema: Act = (_operands, _options, host) => {
  host.print(`${JSON.stringify(scenarioSchema(), undefined, 2)}\n`);
  return exitCode.done;
};
