// Reads files of the user: scenarios, and the files that stand beside them, such as columns of measured times.
import type { Issue } from "#foundation/issue.ts";
import type { GivenScenario } from "#page/file/given.ts";
import { decodedText } from "#scenario/reading/decodedText.ts";

interface ReadFiles {
  readonly scenarios: readonly GivenScenario[];
  readonly issues: readonly Issue[];
}

/** What is named like a table stands beside the scenarios; a single file is a scenario whatever its name is. */
const isTable = ({ name }: File): boolean => /\.(?:csv|txt)$/iu.test(name);

export async function readFiles(files: readonly File[]): Promise<ReadFiles> {
  const read = await Promise.all(
    files.map(async (file) => ({ file, ...decodedText(file.name, new Uint8Array(await file.arrayBuffer())) })),
  );
  const texts = read.flatMap((each) => ("text" in each ? [each] : []));
  const tables = files.length === 1 ? [] : texts.filter(({ file }) => isTable(file));
  const beside = Object.fromEntries(tables.map(({ file, text }) => [file.name, text]));
  return {
    scenarios: texts
      .filter((each) => !tables.includes(each))
      .map(({ file: { name }, text }) => ({
        name: name.replace(/(?<=.)\.[^.]*$/u, ""),
        file: name,
        text,
        beside,
        set: [],
      })),
    issues: read.flatMap((each) => ("issue" in each ? [each.issue] : [])),
  };
}
