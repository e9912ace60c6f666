// Decodes the bytes of a log as spreadsheets and controllers write them, and finds the mark between its columns.

export interface LogDecoder {
  readonly delimiter: string;
  /** What is unusual. */
  readonly words: readonly string[];
  readonly decode: (piece: Buffer) => string;
}

/** `sep=;` in the first line is a hint for a spreadsheet. */
const hint = /^sep=(.)\r?\n/iu;

/** By the first piece of the file: UTF-8, UTF-16 with its mark, or else the encoding of Western Windows. */
export function decoderOf(first: Buffer): LogDecoder {
  const label = encodingOf(first);
  const decoder = new TextDecoder(label);
  const beginning = new TextDecoder(label).decode(first.subarray(0, 64 * 1024));
  const hinted = hint.exec(beginning)?.[1];
  const line = /^[^\r\n]*/u.exec(beginning)?.[0] ?? "";
  // Where commas are decimal, columns are separated by semicolons.
  const delimiter = hinted ?? [";", "\t"].find((mark) => line.includes(mark)) ?? ",";
  let isFirst = true;
  return {
    delimiter,
    words: label === "utf-8" ? [] : [`text in ${label}`],
    decode: (piece) => {
      const text = decoder.decode(piece, { stream: true });
      // The line stays, so that line numbers are those of the file.
      const plain = isFirst && hinted !== undefined ? text.replace(hint, "\n") : text;
      isFirst = false;
      return plain;
    },
  };
}

function encodingOf(first: Buffer): string {
  if (first[0] === 0xff && first[1] === 0xfe) return "utf-16le";
  if (first[0] === 0xfe && first[1] === 0xff) return "utf-16be";
  try {
    new TextDecoder("utf-8", { fatal: true }).decode(first, { stream: true });
    return "utf-8";
  } catch {
    return "windows-1252";
  }
}
