// The hidden folder in which a set of files is completed before it takes the place of the earlier set.
import {
  existsSync,
  lstatSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { hostname } from "node:os";
import { join } from "node:path";

const prefix = ".blowcell-";
/** Its presence decides that the set takes the place of the earlier one; it lists the earlier files that go. */
const readyFile = ".ready";
/** Milliseconds after which a folder counts as left behind if its process cannot be asked. */
const longest = 7 * 24 * 3600 * 1000;

/** As it can stand in a name. */
const host = hostname()
  .replaceAll(/[^\w.]/gu, "")
  .slice(0, 60);

/** Inside the output folder, because a rename cannot cross disks. Its name holds the process that makes the set and its machine. */
export function openStage(folder: string, owner = { process: process.pid, host }): string {
  return mkdtempSync(join(folder, `${prefix}${owner.process}-${owner.host}-`));
}

const ownedName = /^\.blowcell-(\d+)-([\w.]*)-[^-]+$/u;

/** From here on the set is complete: a later call finishes what a kill breaks off. */
export function completeStage(stage: string, obsolete: readonly string[]): void {
  const begun = join(stage, `${readyFile}.new`);
  writeFileSync(begun, JSON.stringify(obsolete));
  renameSync(begun, join(stage, readyFile));
}

export function isComplete(stage: string): boolean {
  return existsSync(join(stage, readyFile));
}

/**
 * Puts a complete set in place, synchronously, so that an interrupt waits for it. All earlier files go before the first new one
 * comes: a folder holds files of one set only, whenever the process is killed.
 */
export function settleStage(stage: string, folder: string): void {
  const names = readdirSync(stage).filter((name) => name !== readyFile);
  const obsolete = JSON.parse(readFileSync(join(stage, readyFile), "utf8")) as readonly string[];
  for (const name of [...obsolete, ...names])
    if (!isFolder(join(folder, name))) rmSync(join(folder, name), { force: true });
  for (const name of names) renameSync(join(stage, name), join(folder, name));
  rmSync(stage, { recursive: true, force: true });
}

/** Finishes complete sets and removes unfinished ones that killed processes left in a folder. */
export function mendFolder(folder: string): void {
  const stages = readdirSync(folder).filter((name) => name.startsWith(prefix));
  for (const name of stages) {
    const stage = join(folder, name);
    if (!isFolder(stage) || hasOwner(stage, name)) continue;
    if (isComplete(stage)) settleStage(stage, folder);
    else rmSync(stage, { recursive: true, force: true });
  }
}

/** Whether the process that makes the set may still be running. */
function hasOwner(stage: string, name: string): boolean {
  const [, process, machine] = ownedName.exec(name) ?? [];
  return machine === host ? isRunning(Number(process)) : Date.now() - statSync(stage).mtimeMs < longest;
}

function isRunning(id: number): boolean {
  try {
    process.kill(id, 0);
    return true;
  } catch (error) {
    // EPERM: it runs for another user.
    return error instanceof Error && "code" in error && error.code === "EPERM";
  }
}

export function isFolder(path: string): boolean {
  return lstatSync(path, { throwIfNoEntry: false })?.isDirectory() === true;
}
