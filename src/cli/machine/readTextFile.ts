// Reads a text file that the user named, or returns an issue.
import { closeSync, openSync, readdirSync, readSync, statSync } from "node:fs";
import { basename, dirname } from "node:path";
import { didYouMean } from "#foundation/didYouMean.ts";
import type { Issue, IssueMeaning } from "#foundation/issue.ts";
import { decodedText, mostBytes } from "#scenario/reading/decodedText.ts";
import { nameOfFailure } from "./machineFailure.ts";

export type TextFile = { readonly text: string } | { readonly issue: Issue };

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

type Finding = Pick<Issue, "code" | "message" | "remedy">;

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

export function readTextFile(path: string): TextFile {
  try {
    return decodedText(path, readBytes(path));
  } catch (error) {
    return unreadable(path, error);
  }
}
