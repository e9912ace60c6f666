// Reads a text file that the user named, or returns an issue.
import { isUtf8 } from "node:buffer";
import { closeSync, openSync, readdirSync, readSync, statSync } from "node:fs";
import { basename, dirname } from "node:path";
import { didYouMean } from "#foundation/didYouMean.ts";
import type { Issue, IssueMeaning } from "#foundation/issue.ts";
import { nameOfFailure } from "./machineFailure.ts";

export type TextFile = { readonly text: string } | { readonly issue: Issue };

/** Far above any scenario or list of measured times. */
const mostBytes = 16 * 1024 * 1024;
const chunkBytes = 64 * 1024;

export const fileIssueCodes = {
  "file-missing": ["there is no file of that name", "Check the name and the folder."],
  "file-is-folder": ["the name is that of a folder", "Name a file in it."],
  "file-not-regular": ["the name is that of a device or a pipe", "Save its content in a file, and name that."],
  "file-unreadable": ["the machine does not let the file be read", "Get the right to read it, or copy it."],
  "file-too-large": ["the file is larger than any scenario or log can be", "Check that it is the right file."],
  "file-not-utf8": ["the bytes of the file are no UTF-8 text", "Save it as UTF-8."],
} as const satisfies Readonly<Record<string, IssueMeaning>>;

/** Our own name for a device or a pipe, which may never end or never begin. */
const notAFile = "not a file";

function isDirectory(path: string): boolean {
  return statSync(path).isDirectory();
}

/** Reads at most one byte beyond the limit. */
function readBytes(path: string): Buffer {
  if (!statSync(path).isFile()) throw Object.assign(new Error(path), { code: isDirectory(path) ? "EISDIR" : notAFile });
  const file = openSync(path, "r");
  try {
    const chunks: Buffer[] = [];
    for (let total = 0; total <= mostBytes;) {
      const chunk = Buffer.alloc(chunkBytes);
      const count = readSync(file, chunk);
      if (count === 0) break;
      chunks.push(chunk.subarray(0, count));
      total += count;
    }
    return Buffer.concat(chunks);
  } finally {
    closeSync(file);
  }
}

type Finding = Pick<Issue, "code" | "message" | "remedy"> & Partial<Pick<Issue, "place" | "expected">>;

function issueOf(finding: Finding): TextFile {
  return { issue: { severity: "error", path: "", fate: "file", ...finding } };
}

function neighbors(path: string): readonly string[] {
  try {
    return readdirSync(dirname(path));
  } catch {
    return [];
  }
}

function missing(path: string): TextFile {
  const meant = didYouMean(basename(path), neighbors(path));
  const remedy = meant === undefined ? "Check the name and the folder that you are in." : `Did you mean ${meant}?`;
  return issueOf({ code: "file-missing", message: `there is no file ${path}`, remedy });
}

export function unreadable(path: string, error: unknown): TextFile {
  const failure = nameOfFailure(error);
  if (failure === "ENOENT") return missing(path);
  if (failure === notAFile) {
    const message = `${path} is a device or a pipe, not a file`;
    return issueOf({ code: "file-not-regular", message, remedy: "Save its content in a file, and name that." });
  }
  if (failure === "EISDIR") {
    const remedy = "Name a file in it, or write a pattern such as folder/*.yaml for all of them.";
    return issueOf({ code: "file-is-folder", message: `${path} is a folder, not a file`, remedy });
  }
  const remedy =
    failure === "EACCES" ? "Ask for the right to read it." : "See to the cause in brackets, then try again.";
  const message = `${path} cannot be read (${failure === "" ? String(error) : failure})`;
  return issueOf({ code: "file-unreadable", message, remedy });
}

/** The replacement character stands where the decoder met the first wrong byte. */
function notUtf8(path: string, bytes: Buffer): TextFile {
  const before = bytes.toString("utf8").split("\uFFFD", 1)[0] ?? "";
  const place = { file: path, line: before.split("\n").length, column: before.length - before.lastIndexOf("\n") };
  const isUtf16 = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
  const message = isUtf16 ? "the file is UTF-16, not UTF-8" : "the file is no UTF-8 text from here on";
  const remedy = "Save it as UTF-8: editors offer it as the encoding when saving.";
  return issueOf({ code: "file-not-utf8", message, remedy, expected: "a text file in UTF-8", place });
}

function decode(path: string, bytes: Buffer): TextFile {
  if (!isUtf8(bytes)) return notUtf8(path, bytes);
  // A byte order mark is not part of the text. Old programs end lines with a carriage return alone.
  const text = bytes.toString("utf8").replace(/^\uFEFF/u, "");
  return { text: text.includes("\n") ? text : text.replaceAll("\r", "\n") };
}

export function readTextFile(path: string): TextFile {
  let bytes: Buffer;
  try {
    bytes = readBytes(path);
  } catch (error) {
    return unreadable(path, error);
  }
  if (bytes.length <= mostBytes) return decode(path, bytes);
  const message = `${path} has more than ${mostBytes / 1024 / 1024} MiB`;
  return issueOf({ code: "file-too-large", message, remedy: "Check that it is the file that you meant." });
}
