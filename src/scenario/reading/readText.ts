// How the reader gets a text beside the scenario; a page has no files.

/** The text of the file at this path, relative to the scenario, or undefined where it cannot be read. */
export type ReadText = (relativePath: string) => string | undefined;
