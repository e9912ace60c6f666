// Failures of the machine, such as a full disk or a read-only folder.

import { exitCode } from "./exitCode.ts";

interface Reason {
  readonly why: string;
  readonly remedy: string;
}

const otherFolder = "Name a folder that you may write to.";
/** The POSIX error names (errno.h) that a user can remedy. */
export const reasons: ReadonlyMap<string, Reason> = new Map([
  ["ENOSPC", { why: "the disk is full", remedy: "Free some space, or name a folder on another disk." }],
  ["EDQUOT", { why: "your share of the disk is used up", remedy: "Free some space, or name another folder." }],
  ["EACCES", { why: "you may not write there", remedy: otherFolder }],
  ["EPERM", { why: "you may not write there", remedy: otherFolder }],
  ["EROFS", { why: "it can only be read", remedy: otherFolder }],
  ["ENOTDIR", { why: "a part of the path is a file, not a folder", remedy: otherFolder }],
  ["EEXIST", { why: "a file of that name is in the way", remedy: "Move that file, or choose another name or folder." }],
  ["EISDIR", { why: "a folder of that name is in the way", remedy: "Move it, or choose another name or folder." }],
  ["ENAMETOOLONG", { why: "the name is too long", remedy: "Choose a shorter name or path." }],
  ["ENOENT", { why: "no folder can be made there", remedy: otherFolder }],
]);
const unknownReason: Reason = { why: "the machine refused", remedy: "See to the cause in brackets, then try again." };

/** The operating system's name of a failure, such as ENOSPC; "" for other failures. */
export function nameOfFailure(error: unknown): string {
  return error instanceof Error && "code" in error && typeof error.code === "string" ? error.code : "";
}

/** The program prints it and leaves exit code 74. */
export class MachineFailure extends Error {
  override readonly name = "MachineFailure";
  readonly remedy: string;
  /** What `explain` explains it by. */
  readonly topic: string;

  constructor(tried: string, cause: unknown) {
    const failure = nameOfFailure(cause);
    const { why, remedy } = reasons.get(failure) ?? unknownReason;
    super(`cannot ${tried}: ${why} (${failure === "" ? String(cause) : failure})`, { cause });
    this.remedy = remedy;
    this.topic = reasons.has(failure) ? failure : `exit code ${exitCode.machineFailed}`;
  }
}
