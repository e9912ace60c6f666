// Types of the bundle's settings, for tests that bundle as the build does.
import type { BuildOptions } from "esbuild";

export const root: string;
export const bundleSettings: BuildOptions;
