import type { Plugin } from "vitest/config";

export const forVite: Plugin;
export const forEsbuild: object;
export function compileCore(file: string): Promise<Uint8Array>;
