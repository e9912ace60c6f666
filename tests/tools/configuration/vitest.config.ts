// How the tests run: sources through the condition `blowcell-source`, quick rooms first, a last line that counts.
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import FastFirst from "../runners/fastFirst.ts";
import { forVite } from "../build/wasmCore.mjs";

const conditions = ["blowcell-source"];

const inProject = (place: string) => fileURLToPath(new URL(`../../../${place}`, import.meta.url));

/** `npm run test:long` names the mode. */
export default defineConfig(({ mode }) => {
  const long = mode === "long";
  const times = long ? [inProject("tests/tools/runners/fileTimes.ts")] : [];
  return {
    root: inProject("."),
    plugins: [forVite],
    resolve: { conditions },
    ssr: { resolve: { conditions } },
    define: { BLOWCELL_VERSION: JSON.stringify("0.0.0-test") },
    test: {
      include: ["tests/**/*.test.ts"],
      exclude: ["**/node_modules/**", ...(long ? [] : ["**/*.long.test.ts"])],
      reporters: ["default", ...times, inProject("tests/tools/runners/lastLine.ts")],
      sequence: { sequencer: FastFirst },
      setupFiles: [inProject("tests/support/caseCount.ts")],
      provide: { caseCount: long ? 1000 : 100 },
      // One process for each core, which loads the sources once: on two cores vitest starts a single one, and a new one for each file.
      maxWorkers: "100%",
      isolate: false,
      testTimeout: long ? 600_000 : 60_000,
      allowOnly: false,
      passWithNoTests: false,
    },
  };
});
