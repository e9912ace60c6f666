// Lists the project's own files with their texts.
import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

export interface SourceFile {
  /** From the project's folder, with forward slashes. */
  readonly path: string;
  readonly text: string;
}

export const projectFolder = fileURLToPath(new URL("../..", import.meta.url));

/** Folders that are not in the repository. */
const foreign = new Set(["node_modules", "dist", "coverage", ".git", ".vitest"]);

function pathsUnder(folder: string): string[] {
  return readdirSync(`${projectFolder}${folder}`, { withFileTypes: true }).flatMap((entry) => {
    const path = folder === "" ? entry.name : `${folder}/${entry.name}`;
    if (foreign.has(entry.name)) return [];
    return entry.isDirectory() ? pathsUnder(path) : [path];
  });
}

/** All files under a folder of the project ("" for the whole project), sorted by path. */
export function filesUnder(folder: string): readonly SourceFile[] {
  return pathsUnder(folder)
    .toSorted()
    .map((path) => ({ path, text: readFileSync(`${projectFolder}${path}`, "utf8") }));
}

/** Only TypeScript and JavaScript. */
export function codeUnder(folder: string): readonly SourceFile[] {
  return filesUnder(folder).filter((file) => /\.(?:ts|tsx|mjs)$/.test(file.path));
}
