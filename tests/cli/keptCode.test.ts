// The compiled code in the user's cache folder: written by the first call, used by the next, and not required.
import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, readFileSync, readdirSync, statSync, writeFileSync } from "node:fs";
import path from "node:path";
import { crc32 } from "node:zlib";
import { describe, expect, it } from "vitest";
import { firstCases, isLong } from "../support/caseCount.ts";
import { builtCommand, callBlowcell, newFolder, projectFolder, type Outcome } from "./callBlowcell.ts";

const scenario = path.join(projectFolder, "scenarios/two-station.yaml");

/** The environment variables of the cache folder on Linux, macOS and Windows. */
const variablesOf = (home: string) => ({ XDG_CACHE_HOME: home, HOME: home, LOCALAPPDATA: home });

function check(home: string): Outcome {
  return callBlowcell(["check", scenario], { environment: variablesOf(home) });
}

/** All files below a folder, by their paths in it. */
function filesIn(home: string): readonly string[] {
  const entries = readdirSync(home, { recursive: true, withFileTypes: true });
  return entries.filter((entry) => entry.isFile()).map(({ parentPath, name }) => path.join(parentPath, name));
}

const first = newFolder();
const answer = check(first);

/** A cache folder as a first call leaves it, with its one file. */
function cached(): { readonly home: string; readonly file: string } {
  const home = newFolder();
  cpSync(first, home, { recursive: true });
  const [file, ...others] = filesIn(home);
  expect(others).toEqual([]);
  return { home, file: file! };
}

const withChecksum = (code: Buffer): Buffer => {
  const sum = Buffer.alloc(4);
  sum.writeUInt32LE(crc32(code));
  return Buffer.concat([code, sum]);
};

describe("compiled code", () => {
  it("is kept by the first call under program, version, architecture and command, and used by the next", () => {
    const { home, file } = cached();
    const [program] = readdirSync(path.dirname(builtCommand)).filter((name) => name.startsWith("program-"));
    expect(path.basename(file)).toBe(`${program}-${process.version}-${process.arch}-check`);
    expect(path.basename(path.dirname(file))).toMatch(/^(?:blowcell|Cache)$/);
    const before = statSync(file);
    expect(check(home)).toEqual(answer);
    // Code that does not match would be replaced by a rename.
    expect(statSync(file).ino).toBe(before.ino);
    expect(filesIn(home)).toEqual([file]);
  });

  it.runIf(isLong)("is not kept after a call that fails or prints help", () => {
    const home = newFolder();
    const environment = variablesOf(home);
    for (const call of firstCases([["../../up"], ["check", "absent.yaml"], ["rnu"], ["x".repeat(300)]], 2))
      expect(callBlowcell(call, { environment }).code).toBe(2);
    for (const call of firstCases([["check", "-h"], ["--help"], ["check", "--help"]], 1))
      expect(callBlowcell(call, { environment }).code).toBe(0);
    expect(filesIn(home)).toEqual([]);
  });

  const damages: readonly (readonly [string, (whole: Buffer) => Buffer])[] = [
    [
      "has one wrong bit",
      (whole) => whole.fill(whole[whole.length >> 1]! ^ 1, whole.length >> 1, (whole.length >> 1) + 1),
    ],
    ["is empty", (whole) => whole.subarray(0, 0)],
    ["is of another V8", (whole) => withChecksum(whole.subarray(0, -4).fill(7, 4, 8))],
    ["begins wrong", (whole) => whole.fill(7, 0, 8)],
    ["is cut short", (whole) => whole.subarray(0, whole.length >> 1)],
    ["is of three bytes", (whole) => whole.subarray(0, 3)],
  ];

  it.each(firstCases(damages, 3))("that %s is ignored and replaced", (_what, damage) => {
    const { home, file } = cached();
    const sound = readFileSync(file);
    writeFileSync(file, damage(readFileSync(file)));
    const damaged = statSync(file).ino;
    expect(check(home)).toEqual(answer);
    expect(statSync(file).ino).not.toBe(damaged);
    expect(Math.abs(statSync(file).size / sound.length - 1)).toBeLessThan(0.1);
    expect(filesIn(home)).toEqual([file]);
  });

  it("made under other flags of V8 is ignored", () => {
    const { home, file } = cached();
    const before = statSync(file).ino;
    const environment = { ...process.env, ...variablesOf(home) };
    const call = ["--no-opt", builtCommand, "check", scenario];
    const { status, stdout } = spawnSync(process.execPath, call, { env: environment, encoding: "utf8" });
    expect([status, stdout]).toEqual([0, answer.output]);
    expect(statSync(file).ino).not.toBe(before);
  });

  it("of earlier programs is removed, and that of other Node versions is kept", () => {
    const { home, file } = cached();
    const beside = (name: string): string => path.join(path.dirname(file), name);
    const old = beside("program-OLDERONE.js-v20.19.0-x64-check");
    const other = beside(path.basename(file).replace(process.version, "v99.0.0"));
    for (const name of [old, other]) writeFileSync(name, "");
    writeFileSync(file, "");
    expect(check(home)).toEqual(answer);
    expect(filesIn(home).toSorted()).toEqual([file, other].toSorted());
  });

  it("that a killed process left unfinished is removed", () => {
    const { home, file } = cached();
    writeFileSync(path.join(path.dirname(file), "unfinished-1"), "half");
    writeFileSync(file, "");
    expect(check(home)).toEqual(answer);
    expect(filesIn(home)).toEqual([file]);
  });

  it("is not required when the cache folder cannot be made, read or found", () => {
    const inTheWay = path.join(newFolder(), "file");
    writeFileSync(inTheWay, "");
    expect(check(inTheWay)).toEqual(answer);
    expect(check(path.join(inTheWay, "deeper"))).toEqual(answer);
    const { home, file } = cached();
    // A folder where the file should be.
    const folders = newFolder();
    mkdirSync(path.join(folders, path.relative(home, file)), { recursive: true });
    expect(check(folders)).toEqual(answer);
    expect(filesIn(folders)).toEqual([]);
  });
});
