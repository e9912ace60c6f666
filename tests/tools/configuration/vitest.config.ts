// How the tests run: sources through the condition `blowcell-source`, fast folders first, a last line with counts.
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import FastFirst from "../runners/fastFirst.ts";
import { forVite } from "../build/wasmCore.mjs";

const conditions = ["blowcell-source"];

export default defineConfig({
  root: fileURLToPath(new URL("../../..", import.meta.url)),
  plugins: [forVite],
  resolve: { conditions },
  ssr: { resolve: { conditions } },
  define: { BLOWCELL_VERSION: JSON.stringify("0.0.0-test") },
  test: {
    include: ["tests/**/*.test.ts"],
    globalSetup: fileURLToPath(new URL("../runners/temporaryFolder.ts", import.meta.url)),
    reporters: ["default", fileURLToPath(new URL("../runners/lastLine.ts", import.meta.url))],
    sequence: { sequencer: FastFirst },
    testTimeout: 20_000,
    allowOnly: false,
    passWithNoTests: false,
  },
});
