// What scripts ask most often; it needs nothing of the program.
import { Outlets } from "./outlets.ts";
import { version } from "./version.ts";

export function tellVersion(): void {
  const outlets = new Outlets();
  outlets.output.write(`${version}\n`);
  outlets.end();
}
