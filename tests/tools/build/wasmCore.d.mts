// Types of the bundler plugins that compile the core.
import type { Plugin as BuildPlugin } from "esbuild";
import type { Plugin } from "vitest/config";

export const forVite: Plugin;
export const forEsbuild: BuildPlugin;
export function withinCore(inputs: readonly string[]): readonly string[];
export function compileSources(standIn?: (file: string) => string | undefined): Promise<Uint8Array>;
