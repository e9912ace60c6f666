// Finds out whose results a folder holds, so that those of a different run are never overwritten unasked.
import type { Issue, IssueMeaning } from "#foundation/issue.ts";
import type { RunOrigin } from "#report/tables/dataPackage.ts";
import { tableSpecs } from "#report/tables/tableSpecs.ts";
import { variantOf } from "#scenario/variantOf.ts";
import type { Options } from "#cli/call/command.ts";
import type { Host } from "#cli/machine/host.ts";
import { safeName } from "#cli/machine/safeName.ts";

export const folderIssueCodes = {
  "folder-other-run": [
    "the output folder holds the results of a different run",
    "Add --replace to replace them, or name another folder with --out or --name.",
  ],
  "folder-other-files": [
    "the output folder has a file that no run wrote, under a name that the results need",
    "Move the file, add --replace to overwrite it, or name another folder with --out or --name.",
  ],
} as const satisfies Readonly<Record<string, IssueMeaning>>;

interface EarlierScenario {
  readonly name?: string;
  readonly file?: string;
  readonly title?: string;
  readonly variant?: string;
  readonly options?: readonly string[];
  readonly sha256?: string;
}

export interface EarlierRun {
  readonly scenarios: readonly EarlierScenario[];
  /** Names of its CSV files. */
  readonly tables: readonly string[];
}

const packageFile = "datapackage.json";
const reportFile = "report.html";

/** The run whose results a folder holds, as its datapackage.json says; undefined where there is none. */
export function earlierRun(folder: string, host: Host): EarlierRun | undefined {
  const path = `${folder}/${packageFile}`;
  const read = host.whatIs(path) === "other" ? host.readText(path) : undefined;
  return read !== undefined && "text" in read ? parsePackage(read.text) : undefined;
}

interface Package {
  readonly program?: unknown;
  readonly scenarios?: readonly EarlierScenario[];
  readonly resources?: readonly { readonly path?: unknown }[];
}

function parsePackage(text: string): EarlierRun | undefined {
  let found: Package | null;
  try {
    found = JSON.parse(text) as Package | null;
  } catch {
    return undefined;
  }
  if (found?.program !== "blowcell" || !Array.isArray(found.scenarios) || !Array.isArray(found.resources)) {
    return undefined;
  }
  const paths = found.resources.map(({ path }) => String(path));
  // A changed file must not lead out of the folder.
  return {
    scenarios: found.scenarios,
    tables: paths.filter((path) => path.endsWith(".csv") && path === safeName(path)),
  };
}

/** A new version of the program and a changed text of the file are no different run; packages before `variant` have none. */
function isSameRun({ scenarios: earlier }: EarlierRun, scenarios: readonly RunOrigin[]): boolean {
  return (
    earlier.length === scenarios.length &&
    scenarios.every((scenario, i) => {
      const { name, title, variant = "", options = [], file = scenario.call?.file } = earlier[i]!;
      const isSameCall =
        file === scenario.call?.file && options.join("\n") === (scenario.call?.options ?? []).join("\n");
      return isSameCall && name === scenario.name && title === scenario.title && variant === variantOf(scenario);
    })
  );
}

/** The reasons for which the results may not be written into the folder; none with --replace. Throws where they cannot. */
export function folderIssues(
  folder: string,
  scenarios: readonly RunOrigin[],
  { replace }: Options,
  host: Host,
): readonly Issue[] {
  host.prepareFolder(folder);
  if (replace === true || host.whatIs(folder) !== "folder") return [];
  const earlier = earlierRun(folder, host);
  if (earlier !== undefined && !isSameRun(earlier, scenarios)) return [otherRun(folder, earlier)];
  const ours = earlier === undefined ? [] : [packageFile, reportFile, ...earlier.tables];
  const needed = [packageFile, reportFile, ...tableSpecs.map(({ name }) => `${name}.csv`)];
  const foreign = needed.filter((name) => !ours.includes(name) && host.whatIs(`${folder}/${name}`) === "other");
  return foreign.length === 0 ? [] : [otherFiles(folder, foreign)];
}

/** The reason for which the finished part of a run that was stopped is not thrown away unasked; none with --replace. */
export function unfinishedIssues(
  folder: string,
  [begun, wanted]: readonly [RunOrigin, RunOrigin],
  { replace }: Options,
): readonly Issue[] {
  const { name, title, call = {} } = begun;
  const run = { scenarios: [{ ...call, name, title, variant: variantOf(begun) }], tables: [] };
  return replace === true || isSameRun(run, [wanted]) ? [] : [otherRun(folder, run)];
}

function otherRun(folder: string, { scenarios }: EarlierRun): Issue {
  const value = scenarios
    .map(({ name, title, variant = "", options = [] }) =>
      [name, title, variant, ...options].filter((words) => words !== undefined && words !== "").join(", "),
    )
    .join(" | ");
  return issueOf("folder-other-run", `${folder} holds the results of a different run`, value);
}

function otherFiles(folder: string, foreign: readonly string[]): Issue {
  const message = `${folder} has files that no run wrote, under names that the results need`;
  return issueOf("folder-other-files", message, foreign.join(", "));
}

function issueOf(code: keyof typeof folderIssueCodes, message: string, value: string): Issue {
  const [, remedy] = folderIssueCodes[code];
  return { code, severity: "error", path: "", message, value, remedy, fate: "file" };
}

/** Files of the scenarios whose text is no longer that of the earlier results. */
export function changedFiles({ scenarios: earlier }: EarlierRun, scenarios: readonly RunOrigin[]): readonly string[] {
  const changed = scenarios.filter(({ call }, i) => {
    const before = earlier[i]?.sha256;
    return before !== undefined && call !== undefined && before !== call.sha256;
  });
  return [...new Set(changed.map(({ call, name }) => call?.file ?? name))];
}
