// Hashes of what blowcell computes, which must be equal in all JavaScript engines.
import { readScenario, runStudy, studyTables, toCsv } from "../../src/blowcell.ts";
import { goldenNumbers } from "./goldenCell.ts";

/** FNV-1a, 32 bits: a public-domain hash that needs no library in a browser. */
function hashOf(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193) >>> 0;
  return hash.toString(16).padStart(8, "0");
}

/** All CSV files of a study of two replications, one after the other. */
function filesOf(name: string, text: string): string {
  const { scenario, issues } = readScenario(text, { name, file: `${name}.yaml`, set: ["run.replications=2"] });
  if (scenario === undefined) throw new Error(JSON.stringify(issues));
  const outcome = runStudy(scenario);
  if (outcome.kind === "stuck") throw new Error(outcome.issue.message);
  return studyTables([outcome.study])
    .map((table) => toCsv(table))
    .join("\n");
}

/** A line each: the cell with every distribution, and each scenario, whose texts are given by name. */
export function goldenHashes(texts: Readonly<Record<string, string>>): string {
  const rows = Object.entries(texts).map(([name, text]) => [name, filesOf(name, text)] as const);
  return [["every distribution", goldenNumbers()] as const, ...rows]
    .map(([name, output]) => `${hashOf(output)} ${String(output.length).padStart(7)} ${name}\n`)
    .join("");
}
