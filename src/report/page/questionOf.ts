// The question that a scenario asks in its opening comment.

/** A line that a program reads, such as the schema for an editor. */
const forPrograms = /^#\s*[\w-]+:/u;

/** The first comment line before the first key; undefined where there is none. */
export function questionOf(text: string): string | undefined {
  const lines = text.split(/\r\n|\r|\n/u).map((line) => line.trim());
  const end = lines.findIndex((line) => line !== "" && !line.startsWith("#"));
  const comments = lines.slice(0, end === -1 ? lines.length : end).filter((line) => line.startsWith("#"));
  const question = comments.find((line) => !forPrograms.test(line))?.replace(/^#+\s*/u, "");
  return question === "" ? undefined : question;
}
