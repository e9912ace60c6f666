// Keeps the code that V8 compiled in the user's cache folder, so that later calls start sooner; without it all works.
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { crc32 } from "node:zlib";
import cachedir from "cachedir";

/** What code belongs to: V8 refuses code of another version by itself, but not code of another program of the same length. */
export interface CodeOwner {
  /** The program's file; its name holds a hash of the content. */
  readonly program: string;
  /** A call compiles only what it needs, so each command has code of its own. */
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

/** Nothing where the file is absent or damaged: V8 checks only the head of it, and crashes later. */
export function readCode(owner: CodeOwner): Buffer | undefined {
  try {
    const file = readFileSync(join(cachedir("blowcell"), nameOf(owner)));
    const code = file.subarray(0, -4);
    return checksum(code).equals(file.subarray(-4)) ? code : undefined;
  } catch {
    return undefined;
  }
}

/** Never throws: where the folder cannot be written, the next call compiles again. */
export function keepCode(owner: CodeOwner, make: () => Uint8Array): void {
  try {
    const folder = cachedir("blowcell");
    mkdirSync(folder, { recursive: true });
    const stage = join(folder, `${nameOf(owner)}.${process.pid}`);
    try {
      const code = make();
      writeFileSync(stage, Buffer.concat([code, checksum(code)]));
      renameSync(stage, join(folder, nameOf(owner)));
    } finally {
      rmSync(stage, { force: true });
    }
    removeCodeOfOthers(folder, owner);
  } catch {
    // Read-only, full or not there at all.
  }
}

/** Code of earlier programs would pile up. */
function removeCodeOfOthers(folder: string, { program }: CodeOwner): void {
  const others = readdirSync(folder).filter((name) => !name.startsWith(program));
  for (const name of others) rmSync(join(folder, name), { force: true });
}
