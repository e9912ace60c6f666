// What scripts ask most often; it needs nothing of the program.
import { Outlets } from "#cli/machine/outlets.ts";
import { version } from "#cli/machine/version.ts";

export function tellVersion(): void {
  const outlets = new Outlets();
  outlets.output.write(`${version}\n`);
  outlets.end();
}
