// Decodes a file that the user chose: UTF-8 text, or an issue that names the place where it is none.
import type { Issue } from "#foundation/issue.ts";

export type DecodedText = { readonly text: string } | { readonly issue: Issue };

type Finding = Pick<Issue, "code" | "message" | "remedy"> & Partial<Pick<Issue, "place" | "expected">>;

/** Far above any scenario or list of measured times. */
export const mostBytes = 16 * 1024 * 1024;

export function decodedText(file: string, bytes: Uint8Array): DecodedText {
  if (bytes.length > mostBytes) {
    const message = `${file} has more than ${mostBytes / 1024 / 1024} MiB`;
    return issueOf({ code: "file-too-large", message, remedy: "Check that it is the file that you meant." });
  }
  try {
    // The decoder drops a byte order mark. Old programs end lines with a carriage return alone.
    const text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    return { text: text.includes("\n") ? text : text.replaceAll("\r", "\n") };
  } catch {
    return notUtf8(file, bytes);
  }
}

/** The replacement character stands where the decoder met the first wrong byte. */
function notUtf8(file: string, bytes: Uint8Array): DecodedText {
  const before = new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes).split("\uFFFD", 1)[0] ?? "";
  const place = { file, line: before.split("\n").length, column: before.length - before.lastIndexOf("\n") };
  const isUtf16 = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
  const message = isUtf16 ? "the file is UTF-16, not UTF-8" : "the file is no UTF-8 text from here on";
  const remedy = "Save it as UTF-8: editors offer it as the encoding when saving.";
  return issueOf({ code: "file-not-utf8", message, remedy, expected: "a text file in UTF-8", place });
}

function issueOf(finding: Finding): DecodedText {
  return { issue: { severity: "error", path: "", fate: "file", ...finding } };
}
