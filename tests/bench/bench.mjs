// Bundles the benchmark into a temporary folder and runs it in Node: `npm run bench [-- --json FILE] [--quick]`.
import { spawnSync } from "node:child_process";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import os from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { forEsbuild } from "../tools/build/wasmCore.mjs";

const root = fileURLToPath(new URL("../..", import.meta.url));
const inRoot = (name) => path.join(root, name);

async function bundle(names, outdir) {
  await build({
    absWorkingDir: root,
    entryPoints: names.map((name) => inRoot(`tests/bench/${name}.ts`)),
    outdir,
    bundle: true,
    platform: "node",
    target: "node20",
    format: "esm",
    conditions: ["blowcell-source"],
    logLevel: "warning",
    plugins: [forEsbuild],
    // CommonJS packages inside an ES module bundle call require for Node's own modules.
    banner: { js: `import{createRequire as openRequire}from"node:module";const require=openRequire(import.meta.url);` },
  });
}

function runNode(...call) {
  return spawnSync(process.execPath, call, { cwd: root, stdio: "inherit" }).status ?? 1;
}

async function bench(folder) {
  await writeFile(path.join(folder, "package.json"), `{"type":"module"}`);
  await bundle(["bench", "oneWork", "oneYear", "pendingTimes", "printUsage"], folder);
  const places = {
    folder,
    scenario: inRoot("tests/bench/two-station.yaml"),
    kernelSource: inRoot("tests/bench/twoStation.cpp"),
    shipped: inRoot("scenarios"),
    commandLine: inRoot("dist/cli/blowcell.js"),
    pageTimes: inRoot("tests/bench/page/pageTimes.mjs"),
    baseline: inRoot("tests/bench/baseline.json"),
  };
  if (runNode(inRoot("tests/tools/build/build.mjs"), "--if-stale") !== 0) return 1;
  return runNode(path.join(folder, "bench.js"), JSON.stringify(places), ...process.argv.slice(2));
}

const folder = await mkdtemp(path.join(os.tmpdir(), "blowcell-bench-"));
try {
  process.exitCode = await bench(folder);
} finally {
  await rm(folder, { recursive: true });
}
