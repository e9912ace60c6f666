// Writes all files of a command or none, and nothing outside the named folder.
import { closeSync, lstatSync, mkdirSync, openSync, rmdirSync, rmSync, statSync, writeFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { setImmediate } from "node:timers/promises";
import { invariant } from "#foundation/invariant.ts";
import { leaveOnSignals } from "./leaveOnSignals.ts";
import { MachineFailure, nameOfFailure } from "./machineFailure.ts";
import { safeName } from "./safeName.ts";
import { completeStage, isComplete, isFolder, mendFolder, openStage, settleStage } from "./stage.ts";

export interface OutputFile {
  readonly name: string;
  /** The whole text, or pieces where it is too long for memory. */
  readonly text: string | Iterable<string>;
  /** Fails where a file of that name exists. */
  readonly isNew?: true;
}

/** What has this name, a broken link included; undefined where nothing has. Throws MachineFailure where that cannot be seen. */
export function whatIs(path: string): "folder" | "other" | undefined {
  try {
    if (lstatSync(path, { throwIfNoEntry: false }) === undefined) return undefined;
    // A link to a folder counts as one.
    return statSync(path, { throwIfNoEntry: false })?.isDirectory() === true ? "folder" : "other";
  } catch (error) {
    if (nameOfFailure(error) === "ENOTDIR") return undefined;
    throw new MachineFailure(`look for ${path}`, error);
  }
}

/** Checked before the first file is moved, so that a folder of the same name changes nothing. */
function refuseFoldersInTheWay(folder: string, files: readonly OutputFile[]): void {
  const inTheWay = files.map(({ name }) => join(folder, name)).find(isFolder);
  if (inTheWay !== undefined) throw Object.assign(new Error(inTheWay), { code: "EISDIR" });
}

/** Only folders that this command made, and only while they are empty. */
function removeMadeFolders(folder: string, firstMade: string | undefined): void {
  if (firstMade === undefined) return;
  try {
    for (let path = resolve(folder); path.startsWith(resolve(firstMade)); path = dirname(path)) rmdirSync(path);
  } catch {
    // Another program has added a file in the meantime: the folder stays.
  }
}

/** Memory holds one piece. An interrupt is handled between two pieces, while no write is under way that could make a new file. */
async function writePieces(path: string, pieces: Iterable<string>): Promise<void> {
  const file = openSync(path, "w");
  try {
    for (const piece of pieces) {
      // Unlike `writeSync`, it continues after a partial write.
      writeFileSync(file, piece);
      await setImmediate();
    }
  } finally {
    closeSync(file);
  }
}

async function fillStage(stage: string, folder: string, files: readonly OutputFile[]): Promise<void> {
  for (const { name, text } of files) {
    if (typeof text === "string") writeFileSync(join(stage, name), text);
    else await writePieces(join(stage, name), text);
  }
  refuseFoldersInTheWay(folder, files);
  // Takes the name at the instant at which it is seen to be free.
  for (const { name, isNew } of files) if (isNew === true) closeSync(openSync(join(folder, name), "wx"));
}

/**
 * Makes a folder ready for results before they are computed: finishes or removes what a killed process left in it, and tries to
 * write. What it made for the trial is removed. Throws MachineFailure.
 */
export function prepareFolder(folder: string): void {
  let firstMade: string | undefined;
  try {
    firstMade = mkdirSync(folder, { recursive: true });
    rmSync(openStage(folder), { recursive: true });
    mendFolder(folder);
  } catch (error) {
    throw new MachineFailure(`write into ${folder}`, error);
  } finally {
    removeMadeFolders(folder, firstMade);
  }
}

/**
 * Writes files into a folder, which is made if missing. Files of the same names are replaced unless they must be new, obsolete
 * ones are removed, and others stay.
 * Throws MachineFailure after removing its own files.
 */
export async function writeFiles(
  folder: string,
  files: readonly OutputFile[],
  obsolete: readonly string[] = [],
): Promise<void> {
  for (const { name } of files) invariant(name === safeName(name), "a file's name is safe", { name });
  let firstMade: string | undefined;
  let stage: string | undefined;
  const undo = (): void => {
    // A complete set is finished by the next call.
    if (stage !== undefined && !isComplete(stage)) rmSync(stage, { recursive: true, force: true });
    removeMadeFolders(folder, firstMade);
  };
  let endHandling: (() => void) | undefined;
  try {
    firstMade = mkdirSync(folder, { recursive: true });
    mendFolder(folder);
    stage = openStage(folder);
    endHandling = leaveOnSignals(undo);
    await fillStage(stage, folder, files);
    completeStage(stage, obsolete);
    settleStage(stage, folder);
  } catch (error) {
    undo();
    throw new MachineFailure(`write into ${folder}`, error);
  } finally {
    endHandling?.();
  }
}
