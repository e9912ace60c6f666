// Common settings of all bundles for Node.
import { readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { forEsbuild } from "./wasmCore.mjs";

export const root = fileURLToPath(new URL("../../..", import.meta.url));

const { version, dependencies } = JSON.parse(readFileSync(path.join(root, "package.json"), "utf8"));

export const bundleSettings = {
  absWorkingDir: root,
  bundle: true,
  platform: "node",
  target: "node20",
  format: "esm",
  logLevel: "warning",
  conditions: ["blowcell-source"],
  define: { BLOWCELL_VERSION: JSON.stringify(version) },
  // Installed with the package, and imported from there.
  external: Object.keys(dependencies),
  plugins: [forEsbuild],
  // CommonJS packages inside an ES module bundle call require for Node's own modules.
  banner: { js: `import{createRequire as openRequire}from"node:module";const require=openRequire(import.meta.url);` },
};
