// Reads the parts of the page, which the build writes beside the program.
import { readFileSync } from "node:fs";
import type { PageParts } from "#page/file/pageFile.ts";

export function readPageParts(): PageParts {
  return JSON.parse(readFileSync(new URL("page.json", import.meta.url), "utf8")) as PageParts;
}
