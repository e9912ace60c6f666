// Runs a few lines of TypeScript with the real host in a separate process, to send it signals and close its pipes.
import { spawn, type ChildProcess } from "node:child_process";
import { chmodSync, writeFileSync } from "node:fs";
import path from "node:path";
import { build } from "esbuild";
import { forEsbuild } from "../tools/build/wasmCore.mjs";
import { newFolder, projectFolder } from "./callBlowcell.ts";

/** Bundles lines that may use `host`, and returns the path of the bundle. */
export async function bundleLines(lines: string): Promise<string> {
  const contents = `import { openHost } from "#cli/machine/host.ts"; import { runProgram } from "#cli/program.ts";
    const host = openHost();
    const act = async () => { ${lines}; return 0; };
    const command = { name: "try", operands: "", meaning: "", example: "", options: [], load: async () => act };
    host.leave(await runProgram(["try"], host, [command]));`;
  const { outputFiles } = await build({
    stdin: { contents, resolveDir: projectFolder, loader: "ts" },
    bundle: true,
    write: false,
    platform: "node",
    format: "esm",
    conditions: ["blowcell-source"],
    plugins: [forEsbuild],
    define: { BLOWCELL_VERSION: '"0.0.0"' },
    banner: { js: `import{createRequire as openRequire}from"node:module";const require=openRequire(import.meta.url);` },
  });
  const folder = newFolder();
  // Another user must be able to read it.
  chmodSync(folder, 0o755);
  const file = path.join(folder, "lines.mjs");
  writeFileSync(file, outputFiles[0]?.text ?? "");
  return file;
}

export interface Ending {
  readonly code: number | null;
  readonly signal: string | null;
  readonly errors: string;
}

/** Calls `interfere` with the running process after its first output on standard error. */
export function runHost(
  command: readonly [string, ...string[]],
  interfere: (child: ChildProcess) => void = () => undefined,
  user?: number,
): Promise<Ending> {
  const [program, ...args] = command;
  const child = spawn(program, args, user === undefined ? {} : { uid: user, gid: user });
  let errors = "";
  child.stderr.once("data", () => interfere(child));
  child.stderr.on("data", (chunk: Buffer) => (errors += chunk.toString()));
  return new Promise((resolve) => {
    child.on("close", (code, signal) => resolve({ code, signal, errors }));
  });
}
