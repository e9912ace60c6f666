// The other versions of Node that the long tests call, each from a package of the registry.
import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";

const versions = ["20", "22", "24"];

const programOf = (version: string): string =>
  fileURLToPath(new URL(`node_modules/node${version}/bin/node`, import.meta.url));

/** Program by version. The packages hold programs for Linux on x86-64; elsewhere there are none. */
export function otherNodes(): readonly (readonly [version: string, program: string])[] {
  const found = versions.map((version) => [version, programOf(version)] as const);
  const missing = found.filter(([, program]) => !existsSync(program));
  if (missing.length > 0 && process.platform === "linux" && process.arch === "x64") {
    const names = missing.map(([version]) => version).join(", ");
    throw new Error(`Node ${names} is not installed: run npm ci --prefix tests/otherEngine.`);
  }
  return found.filter((each) => !missing.includes(each));
}
