// Makes the table of shipped scenarios from the question in the second line of each file.
import { withReadmeTable } from "./readmeTable.ts";

/** The same text with the regenerated table between its two marks; `files` maps the name of each file to its text. */
export function withScenarioTable(readme: string, files: ReadonlyMap<string, string>): string {
  const rows = [...files].map(([file, text]) => [`\`${file.replace(/\.yaml$/u, "")}\``, questionIn(text)]);
  return withReadmeTable(readme, "scenarios", [["scenario", "question"], ...rows]);
}

function questionIn(text: string): string {
  return text
    .split("\n")[1]!
    .replace(/^# /u, "")
    .replace(/ Cell and product are invented\.$/u, "");
}
