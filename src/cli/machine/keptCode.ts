// Keeps compiled code in the cache folder of the user, so that later calls start sooner and every call works without it.
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { crc32 } from "node:zlib";
import cachedir from "cachedir";

/** The program and command of some code. V8 itself refuses code of another version, but not of another program of the same length. */
export interface CodeOwner {
  /** The program's file; its name holds a hash of the content. */
  readonly program: string;
  /** A call compiles only what it needs, so each command has a file of its own. */
  readonly command: string;
}

function nameOf({ program, command }: CodeOwner): string {
  return [program, process.version, process.arch, encodeURIComponent(command)].join("-");
}

function checksum(code: Uint8Array): Buffer {
  const bytes = Buffer.alloc(4);
  bytes.writeUInt32LE(crc32(code));
  return bytes;
}

/** Undefined when the file is absent or damaged. V8 checks only the head and crashes on damaged code. */
export function readCode(owner: CodeOwner): Buffer | undefined {
  try {
    const file = readFileSync(join(cachedir("blowcell"), nameOf(owner)));
    const code = file.subarray(0, -4);
    return checksum(code).equals(file.subarray(-4)) ? code : undefined;
  } catch {
    return undefined;
  }
}

/** Never throws. When the folder cannot be written, the next call compiles again. */
export function keepCode(owner: CodeOwner, make: () => Uint8Array): void {
  try {
    const folder = cachedir("blowcell");
    mkdirSync(folder, { recursive: true });
    // It does not begin with the program's name: what a killed process leaves goes with the code of others.
    const stage = join(folder, `unfinished-${process.pid}`);
    try {
      const code = make();
      writeFileSync(stage, Buffer.concat([code, checksum(code)]));
      renameSync(stage, join(folder, nameOf(owner)));
    } finally {
      rmSync(stage, { force: true });
    }
    removeCodeOfOthers(folder, owner);
  } catch {
    // The folder is read-only, full or missing.
  }
}

/** Otherwise the code of each earlier version would stay. Where this takes the unfinished code of a running process, its next call makes it again. */
function removeCodeOfOthers(folder: string, { program }: CodeOwner): void {
  const others = readdirSync(folder).filter((name) => !name.startsWith(program));
  for (const name of others) rmSync(join(folder, name), { force: true });
}
