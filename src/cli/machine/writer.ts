// The one way by which files leave: all of a command's files or none, and nothing outside the folder that was named.
import {
  closeSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  promises,
  renameSync,
  rmdirSync,
  rmSync,
  statSync,
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
  /** Fails where a file of that name is there already, whoever made it and when. */
  readonly isNew?: true;
}

/** What is there under this name, a broken link included; undefined where nothing is. */
export function whatIs(path: string): "folder" | "other" | undefined {
  const there = lstatSync(path, { throwIfNoEntry: false });
  if (there === undefined) return undefined;
  const isFolder = there.isDirectory() || statSync(path, { throwIfNoEntry: false })?.isDirectory() === true;
  return isFolder ? "folder" : "other";
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

/** What an interrupt would leave behind, and how it is taken away. */
const begun = new Set<() => void>();

/** For an interrupt: takes away what was begun. */
export function undoBegun(): void {
  for (const undo of begun) undo();
}

/** Waits for each piece, so that no more than one is held and an interrupt comes through in between. */
async function writePieces(path: string, pieces: Iterable<string>): Promise<void> {
  const file = await promises.open(path, "w");
  try {
    // Unlike write, it does not stop halfway where the disk takes only a part.
    for (const piece of pieces) await file.writeFile(piece);
  } finally {
    await file.close();
  }
}

/** The stage lies inside the folder: a rename cannot cross disks, and a neighbor folder would be outside --out. */
async function moveThroughStage(stage: string, folder: string, files: readonly OutputFile[]): Promise<void> {
  for (const { name, text } of files) {
    if (typeof text === "string") writeFileSync(join(stage, name), text);
    else await writePieces(join(stage, name), text);
  }
  refuseFoldersInTheWay(folder, files);
  // In one go: an interrupt waits until all are in place.
  for (const { name, isNew } of files) {
    // Takes the name at the same instant as it sees that nobody has it.
    if (isNew === true) closeSync(openSync(join(folder, name), "wx"));
    renameSync(join(stage, name), join(folder, name));
  }
}

/**
 * Puts files into a folder, made if need be; files of the same names are replaced where they need not be new, all others stay
 * untouched.
 * Throws MachineFailure, having left nothing of its own behind.
 */
export async function writeFiles(folder: string, files: readonly OutputFile[]): Promise<void> {
  for (const { name } of files) invariant(name === safeName(name), "a file's name is safe", { name });
  let firstMade: string | undefined;
  let stage: string | undefined;
  const removeStage = (): void => {
    if (stage !== undefined) rmSync(stage, { recursive: true, force: true });
  };
  const undo = (): void => {
    removeStage();
    removeMadeFolders(folder, firstMade);
  };
  begun.add(undo);
  try {
    firstMade = mkdirSync(folder, { recursive: true });
    stage = mkdtempSync(join(folder, ".blowcell-"));
    await moveThroughStage(stage, folder, files);
    // Empty by now; taking away whatever is in it, as after a failure, Node has to load first.
    rmdirSync(stage);
  } catch (error) {
    undo();
    throw new MachineFailure(`write into ${folder}`, error);
  } finally {
    begun.delete(undo);
  }
}
