// Reading a user's file: its text, or one issue for each kind of fault.
import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { describe, expect, it } from "vitest";
import type { Issue } from "#foundation/issue.ts";
import { fileIssueCodes, readTextFile } from "#cli/machine/readTextFile.ts";

const folder = mkdtempSync(path.join(tmpdir(), "blowcell-test-"));

function fileOf(name: string, content: string | Uint8Array): string {
  const file = path.join(folder, name);
  writeFileSync(file, content);
  return file;
}

function issueOf(file: string): Issue | undefined {
  const read = readTextFile(file);
  return "issue" in read ? read.issue : undefined;
}

describe("reading a text file", () => {
  it("gives its text, without a byte order mark", () => {
    expect(readTextFile(fileOf("marked.yaml", "\uFEFFtitle: Flasche 75 °C\n"))).toEqual({
      text: "title: Flasche 75 °C\n",
    });
    expect(readTextFile(fileOf("empty.yaml", ""))).toEqual({ text: "" });
  });

  it("reports a missing file, and suggests a similar name", () => {
    fileOf("two-station.yaml", "");
    expect(issueOf(path.join(folder, "two-staton.yaml"))).toMatchObject({
      code: "file-missing",
      remedy: "Did you mean two-station.yaml?",
    });
    expect(issueOf(path.join(folder, "none", "x.yaml"))).toMatchObject({ code: "file-missing" });
  });

  it("reports a folder in place of a file", () => {
    mkdirSync(path.join(folder, "inner"));
    expect(issueOf(path.join(folder, "inner"))).toMatchObject({ code: "file-is-folder", fate: "file" });
  });

  it("reports a path through a file", () => {
    const file = fileOf("file.yaml", "");
    expect(issueOf(path.join(file, "x.yaml"))).toMatchObject({ code: "file-unreadable" });
  });

  it("reports the place of the first byte that is not UTF-8", () => {
    const bytes = Uint8Array.from([...new TextEncoder().encode("title: é\nname: "), 0xe9, 0x0a]);
    const file = fileOf("latin.yaml", bytes);
    expect(issueOf(file)).toMatchObject({ code: "file-not-utf8", place: { file, line: 2, column: 7 } });
  });

  it("recognizes UTF-16", () => {
    const file = fileOf("wide.yaml", Uint8Array.from([0xff, 0xfe, 0x61, 0]));
    expect(issueOf(file)?.message).toContain("UTF-16");
  });

  it("refuses a file that is too large, and a device or a pipe before it is opened", () => {
    expect(issueOf(fileOf("large.yaml", "x".repeat(16 * 1024 * 1024 + 1)))).toMatchObject({ code: "file-too-large" });
    expect(issueOf("/dev/zero")).toMatchObject({ code: "file-not-regular" });
    const pipe = path.join(folder, "pipe");
    execFileSync("sh", ["-c", 'mkfifo "$1"', "sh", pipe]);
    expect(issueOf(pipe)).toMatchObject({
      code: "file-not-regular",
      remedy: expect.stringContaining("Save") as string,
    });
  });

  it("reads lines that end with a carriage return alone", () => {
    expect(readTextFile(fileOf("old.yaml", "a: 1\rb: 2\r"))).toEqual({ text: "a: 1\nb: 2\n" });
    expect(readTextFile(fileOf("dos.yaml", "a: 1\r\nb: 2\r\n"))).toEqual({ text: "a: 1\r\nb: 2\r\n" });
  });

  it("uses only listed codes, each with a remedy", () => {
    const issues = ["none.yaml", "inner", "latin.yaml", "large.yaml"].map((name) => issueOf(path.join(folder, name)));
    expect(issues.map((issue) => issue?.remedy)).not.toContain("");
    expect(issues.filter((issue) => !(String(issue?.code) in fileIssueCodes))).toEqual([]);
  });
});
