// How the tests run: sources through the condition `blowcell-source`, fast folders first, a last line with counts.
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import { bundleSettings } from "../build/bundleSettings.mjs";
import FastFirst from "../runners/fastFirst.ts";
import { forVite } from "../build/wasmCore.mjs";

const conditions = ["blowcell-source"];

const inProject = (place: string) => fileURLToPath(new URL(`../../../${place}`, import.meta.url));

export default defineConfig(({ mode }) => {
  // As called by `npm run test:long`.
  const long = mode === "long";
  const times = long ? [inProject("tests/tools/runners/fileTimes.ts")] : [];
  return {
    root: inProject("."),
    plugins: [forVite],
    resolve: { conditions },
    ssr: { resolve: { conditions } },
    define: bundleSettings.define ?? {},
    test: {
      include: ["tests/**/*.test.ts"],
      exclude: ["**/node_modules/**", ...(long ? [] : ["**/*.long.test.ts"])],
      globalSetup: inProject("tests/tools/runners/temporaryFolder.ts"),
      setupFiles: inProject("tests/support/caseCount.ts"),
      provide: { caseCount: long ? 500 : 20 },
      reporters: ["default", ...times, inProject("tests/tools/runners/lastLine.ts")],
      sequence: { sequencer: FastFirst },
      // One process a core, which loads the sources once. By default there is a process a file, and on two cores one at a time.
      maxWorkers: "100%",
      isolate: false,
      // A test whose loop runs over nothing fails. A busy machine makes nothing wrong.
      expect: { requireAssertions: true, poll: { timeout: 120_000 } },
      testTimeout: long ? 600_000 : 60_000,
      allowOnly: false,
      passWithNoTests: false,
    },
  };
});
