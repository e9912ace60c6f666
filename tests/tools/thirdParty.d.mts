// Types of the list of packages in a bundle.
import type { Metafile } from "esbuild";

export function packagesOf(metafiles: readonly Metafile[]): string[];
export function thirdParty(metafiles: readonly Metafile[]): string;
