// Writes fitted distributions into a copy of a scenario, or into the scenario itself, after checking that it can still be read.
import type { Fit } from "#analysis/fit/logFit.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import { PLASTICATOR, VALVE } from "#cell/words/cycleNames.ts";
import { stepNames } from "#cell/words/stepNames.ts";
import type { Options } from "#cli/call/command.ts";
import type { Host } from "#cli/machine/host.ts";
import { plainText } from "#foundation/plainText.ts";
import { safeName } from "#cli/machine/safeName.ts";
import type { Issue, IssueMeaning } from "#foundation/issue.ts";
import { distributionText } from "#report/fit/fitWords.ts";
import { changedText, type ChangedText, type WantedChange } from "#scenario/writing/changedText.ts";
import { scenarioName } from "./loadScenarios.ts";

export const fitIssueCodes = {
  "fit-no-place": [
    "the scenario has no place for a fitted step",
    "Name its stations and steps as the log does, list stations that differ one by one, or write the value yourself.",
  ],
  "fit-no-target": ["--as names a copy, but no --into a scenario to copy", "Add --into with the scenario."],
  "fit-copy-exists": ["the copy of the scenario is there already", "Name another one with --as."],
  "fit-unfit": [
    "a fitted value does not fit the scenario",
    "Look at the step in fit.html, and write a value yourself.",
  ],
} as const satisfies Readonly<Record<string, IssueMeaning>>;

export interface Target {
  readonly file: string;
  readonly text: string;
  readonly copy: string;
}

/** The scenario and the name of its copy, before anything is computed. */
export function targetOf(
  { into, as }: Options,
  host: Host,
): Target | { readonly issues: readonly Issue[] } | undefined {
  if (into === undefined && as === undefined) return undefined;
  if (into === undefined) {
    const [, remedy] = fitIssueCodes["fit-no-target"];
    return { issues: [{ ...issueOf("fit-no-target", `${as!} is a copy of no scenario.`, remedy), option: "--as" }] };
  }
  const content = host.readText(into);
  if ("issue" in content) return { issues: [content.issue] };
  const { issues } = reading(into, content.text, host);
  const errors = issues.filter(({ severity }) => severity === "error");
  if (errors.length > 0) return { issues: errors };
  const copy = as ?? into.replace(/(\.[^./\\]*)?$/u, (ending) => `-fitted${ending === "" ? ".yaml" : ending}`);
  const isOther = copy !== into && host.whatIs(copy) !== undefined;
  if (isOther)
    return { issues: [issueOf("fit-copy-exists", `${copy} is there already.`, "Name another one with --as.")] };
  const { name } = partsOf(copy);
  if (name === "" || name !== safeName(name))
    return {
      issues: [issueOf("option-value", `${copy} is no name of a file.`, "Write a name such as mine-fitted.yaml.")],
    };
  return { file: into, text: content.text, copy };
}

/** Prints each changed line. */
export async function writeInto(
  target: Target,
  fits: readonly Fit[],
  options: Options,
  host: Host,
): Promise<readonly Issue[]> {
  const changed = changedText(target.text, fits.flatMap(changeOf));
  const { issues } = reading(target.file, changed.text, host);
  const errors = issues.filter(({ severity }) => severity === "error");
  if (errors.length > 0) {
    const remedy = "Look at the step in fit.html, and write a value yourself.";
    return errors.map(({ message, place }) => ({
      ...issueOf("fit-unfit", message, remedy),
      ...(place ? { place } : {}),
    }));
  }
  const { folder, name } = partsOf(target.copy);
  const isNew = target.copy === target.file ? {} : { isNew: true as const };
  await host.writeFiles(folder, [{ name, text: changed.text, ...isNew }]);
  if (options.quiet !== true)
    host.report(
      `${changeLines(changed, target)
        .map((line) => plainText(line))
        .join("\n")}\n`,
    );
  return changed.missing.length === 0 ? [] : [noPlace(changed.missing, target)];
}

function changeLines({ changes }: ChangedText, { copy }: Target): readonly string[] {
  const lines = changes.map(
    ({ line, path, before, after }) => `${copy}:${line}: ${path}: ${before} -> ${short(after)}`,
  );
  return [...lines, `${copy} is written with ${changes.length} changed ${changes.length === 1 ? "value" : "values"}`];
}

const short = (text: string): string => (text.length > 80 ? `${text.slice(0, 79)}…` : text);

/** Of the steps that no station has the keys that hold them. */
const ownPlaces: readonly (readonly [resource: string, step: string, key: string])[] = [
  [PLASTICATOR, stepNames["screw.recharge"], "delivery.recharge"],
  [PLASTICATOR, stepNames["mold.drop"], "delivery.drop"],
  [VALVE, stepNames["valve.toPort"], "valve.shift"],
];

/** Steps belong to their station, the screw or the valve, stops to the list of stops by their name. */
function changeOf({ station, step, kind, suggestion }: Fit): readonly WantedChange[] {
  if (suggestion === undefined) return [];
  const text = distributionText(suggestion.distribution);
  const own = ownPlaces.find(([resource, name]) => alike(resource, station) && alike(name, step));
  if (kind === "step" && own) return [{ path: own[2].split("."), text }];
  if (kind === "step") return [{ path: ["stations", station, "steps", step], text }];
  return [{ path: ["stops", step, kind], text }];
}

const alike = (one: string, other: string): boolean => one.toLowerCase() === other.toLowerCase();

function noPlace(missing: readonly string[], { file }: Target): Issue {
  const shown = missing.slice(0, 10).join(", ") + (missing.length > 10 ? ", …" : "");
  const message = `${file} has no place for ${missing.length} of the fits.`;
  return { ...issueOf("fit-no-place", message, fitIssueCodes["fit-no-place"][1]), severity: "warning", value: shown };
}

function reading(file: string, text: string, host: Host): { readonly issues: readonly Issue[] } {
  const { folder } = partsOf(file);
  return readSettled(text, {
    name: scenarioName(file),
    file,
    readText: (beside) => {
      const read = host.readText(/^(?:[/\\]|[a-z]:)/iu.test(beside) ? beside : `${folder}/${beside}`);
      return "text" in read ? read.text : undefined;
    },
  });
}

function partsOf(path: string): { readonly folder: string; readonly name: string } {
  const name = path.replace(/^.*[/\\]/u, "");
  const folder = path.slice(0, path.length - name.length);
  return { folder: folder === "" ? "." : folder, name };
}

function issueOf(code: string, message: string, remedy: string): Issue {
  return { code, severity: "error", path: "", message, remedy, fate: "file" };
}
