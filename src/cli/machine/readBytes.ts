// Reads a file of any size in pieces, with its size.
import { closeSync, fstatSync, openSync, readSync, statSync } from "node:fs";

const pieceBytes = 256 * 1024;

export interface OpenedBytes {
  readonly size: number;
  readonly pieces: Iterable<Buffer>;
}

/** Throws the machine's error where the file cannot be read; a device or a pipe is refused before it is opened. */
export function openBytes(path: string): OpenedBytes {
  const kind = statSync(path);
  if (!kind.isFile()) throw Object.assign(new Error(path), { code: kind.isDirectory() ? "EISDIR" : "not a file" });
  const file = openSync(path, "r");
  return { size: fstatSync(file).size, pieces: piecesOf(file) };
}

function* piecesOf(file: number): Generator<Buffer> {
  try {
    for (;;) {
      const piece = Buffer.alloc(pieceBytes);
      const count = readSync(file, piece);
      if (count === 0) return;
      yield piece.subarray(0, count);
    }
  } finally {
    closeSync(file);
  }
}
