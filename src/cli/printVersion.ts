// Prints the version without loading the program.
import { Outlets } from "#cli/machine/outlets.ts";
import { version } from "#cli/machine/version.ts";

export function printVersion(): void {
  const outlets = new Outlets();
  outlets.output.write(`${version}\n`);
  outlets.end();
}
