// Failures of the machine, such as a full disk or a read-only folder.

interface Reason {
  readonly why: string;
  readonly remedy: string;
}

const otherFolder = "Name a folder that you may write to, by --out.";
/** The POSIX error names (errno.h) that a user can remedy. */
const reasons: ReadonlyMap<string, Reason> = new Map([
  ["ENOSPC", { why: "the disk is full", remedy: "Free some space, or name a folder on another disk by --out." }],
  ["EDQUOT", { why: "your share of the disk is used up", remedy: "Free some space, or name another folder by --out." }],
  ["EACCES", { why: "you may not write there", remedy: otherFolder }],
  ["EPERM", { why: "you may not write there", remedy: otherFolder }],
  ["EROFS", { why: "it can only be read", remedy: otherFolder }],
  ["ENOTDIR", { why: "a part of the path is a file, not a folder", remedy: otherFolder }],
  ["EEXIST", { why: "a file of that name is in the way", remedy: "Move that file, or name another folder by --out." }],
  ["EISDIR", { why: "a folder of that name is in the way", remedy: "Move it, or name another folder by --out." }],
  ["ENAMETOOLONG", { why: "the name is too long", remedy: "Name a folder with a shorter path by --out." }],
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

  constructor(tried: string, cause: unknown) {
    const failure = nameOfFailure(cause);
    const { why, remedy } = reasons.get(failure) ?? unknownReason;
    super(`cannot ${tried}: ${why} (${failure === "" ? String(cause) : failure})`, { cause });
    this.remedy = remedy;
  }
}
