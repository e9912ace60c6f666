// What holds of the reading of any text: issues in words with place, code and remedy, and agreement with the JSON Schema.
import { Ajv2020 } from "ajv/dist/2020.js";
import { parse } from "yaml";
import { readSettled } from "#analysis/study/readSettled.ts";
import type { Issue } from "#foundation/issue.ts";
import { scenarioSchema } from "#scenario/keys/scenarioSchema.ts";
import type { ScenarioReading } from "#scenario/resolving/readScenario.ts";
import { issueMeanings } from "#cli/commands/issueMeanings.ts";
import type { FuzzCase } from "./fuzzCase.ts";

const accepts = new Ajv2020({ strict: true, strictRequired: false, allowUnionTypes: true }).compile(scenarioSchema());

/** Of the scenario's own text, and of a file beside it that is no scenario. */
const mostIssues = 250;

export interface Judged {
  readonly reading: ScenarioReading;
  readonly faults: readonly string[];
}

export function judgeReading({ text, set, column }: FuzzCase): Judged {
  const reading = readSettled(text, { name: "cell", file: "cell.yaml", set, readText: () => column });
  const { scenario, issues } = reading;
  const refused = issues.some(({ severity }) => severity === "error");
  const faults = issues.flatMap(faultsOf);
  if ((scenario === undefined) !== refused) faults.push("a scenario is there exactly where nothing is an error");
  if (issues.length > mostIssues) faults.push(`${issues.length} issues`);
  if (
    scenario !== undefined &&
    set.length === 0 &&
    !issues.some(({ code }) => code === "old-word") &&
    !accepts(parse(text))
  )
    faults.push(`the schema refuses what the reader accepts: ${JSON.stringify(accepts.errors?.at(0))}`);
  return { reading, faults };
}

function faultsOf({ code, place, message, remedy }: Issue): string[] {
  const faults: string[] = [];
  if (!issueMeanings.has(code)) faults.push(`explain does not know the code ${code}`);
  if (place === undefined || !(place.line >= 1) || !(place.column >= 1)) faults.push(`${code} has no place`);
  if (/invalid input|\bundefined\b|\[object/iu.test(message) || message.trim() === "")
    faults.push(`${code} says: ${message}`);
  if (!/\w/u.test(remedy)) faults.push(`${code} has no remedy`);
  return faults;
}
