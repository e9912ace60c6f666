// A file of records that survives a kill at any moment: one line a record, each with its checksum, written through to the disk.
import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  writeSync,
} from "node:fs";
import { join } from "node:path";
import { checksum } from "./checksum.ts";
import { MachineFailure } from "./machineFailure.ts";

export interface Journal {
  add(record: string): void;
  close(): void;
}

/** The line of a record, which is JSON text. */
export function journalLine(record: string): string {
  return `{"sha256":"${checksum(record)}","record":${record}}\n`;
}

const linePattern = /^\{"sha256":"([0-9a-f]{64})","record":(.*)\}$/u;

/** The records of a journal; damaged and unfinished lines are left out. Empty where there is none. */
export function readJournal(path: string): readonly string[] {
  if (!existsSync(path)) return [];
  try {
    return readFileSync(path, "utf8")
      .split("\n")
      .flatMap((line) => {
        const [, sum, record = ""] = linePattern.exec(line) ?? [];
        return sum !== undefined && sum === checksum(record) ? [record] : [];
      });
  } catch (error) {
    throw new MachineFailure(`read ${path}`, error);
  }
}

function writeThrough(file: number, text: string): void {
  const bytes = Buffer.from(text);
  for (let done = 0; done < bytes.length;) done += writeSync(file, bytes, done);
  fsyncSync(file);
}

/** Begins the journal with the records that are kept; it replaces the earlier one at once or not at all. */
export function openJournal(folder: string, name: string, kept: readonly string[]): Journal {
  const attempt = <T>(act: () => T): T => {
    try {
      return act();
    } catch (error) {
      throw new MachineFailure(`write into ${folder}`, error);
    }
  };
  const file = attempt(() => {
    mkdirSync(folder, { recursive: true });
    const begun = join(folder, `.${name}.new`);
    rmSync(begun, { force: true });
    const opened = openSync(begun, "wx");
    writeThrough(opened, kept.map(journalLine).join(""));
    renameSync(begun, join(folder, name));
    return opened;
  });
  return {
    add: (record) => attempt(() => writeThrough(file, journalLine(record))),
    close: () => attempt(() => closeSync(file)),
  };
}
