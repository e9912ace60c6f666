// How the reader of a scenario asks for a text beside it: a shell has files, a page has none.

/** The text of the file at this path, relative to the scenario, or undefined where it cannot be read. */
export type ReadText = (relativePath: string) => string | undefined;
