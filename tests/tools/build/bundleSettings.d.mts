// Types of the bundle's settings, for tests that bundle like the build.
import type { BuildOptions } from "esbuild";

export const root: string;
export const bundleSettings: BuildOptions;
