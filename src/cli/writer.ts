// The one way by which files leave: all of a command's files or none, and nothing outside the folder that was named.
import {
  closeSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  renameSync,
  rmdirSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { dirname, join, resolve } from "node:path";
import { invariant } from "#foundation/invariant.ts";
import { MachineFailure } from "./machineFailure.ts";
import { safeName } from "./safeName.ts";

export interface OutputFile {
  readonly name: string;
  /** Whole, or piece by piece where it is too long to be held at once. */
  readonly text: string | Iterable<string>;
}

function isFolder(path: string): boolean {
  return lstatSync(path, { throwIfNoEntry: false })?.isDirectory() === true;
}

/** Found before the first file is moved, so that a folder in the way leaves everything as it was. */
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
    // Somebody else has put something there in the meantime: it stays.
  }
}

function writePieces(path: string, pieces: Iterable<string>): void {
  const file = openSync(path, "w");
  try {
    // Unlike writeSync, it does not stop halfway where the disk takes only a part.
    for (const piece of pieces) writeFileSync(file, piece);
  } finally {
    closeSync(file);
  }
}

/** The stage lies inside the folder: a rename cannot cross disks, and a neighbor folder would be outside --out. */
function moveThroughStage(folder: string, files: readonly OutputFile[]): void {
  const stage = mkdtempSync(join(folder, ".blowcell-"));
  try {
    for (const { name, text } of files) writePieces(join(stage, name), typeof text === "string" ? [text] : text);
    refuseFoldersInTheWay(folder, files);
    for (const { name } of files) renameSync(join(stage, name), join(folder, name));
  } finally {
    rmSync(stage, { recursive: true, force: true });
  }
}

/**
 * Puts files into a folder, made if need be; files of the same names are replaced, all others stay untouched.
 * Throws MachineFailure, having left nothing of its own behind. Works in one go, so an interrupt waits until it is done.
 */
export function writeFiles(folder: string, files: readonly OutputFile[]): void {
  for (const { name } of files) invariant(name === safeName(name), "a file's name is safe", { name });
  let firstMade: string | undefined;
  try {
    firstMade = mkdirSync(folder, { recursive: true });
    moveThroughStage(folder, files);
  } catch (error) {
    removeMadeFolders(folder, firstMade);
    throw new MachineFailure(`write into ${folder}`, error);
  }
}
