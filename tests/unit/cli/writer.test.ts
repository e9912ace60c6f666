// The writer writes all files or none, only into the given folder, and keeps the user's other files.
import { lstatSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { hostname, tmpdir } from "node:os";
import path from "node:path";
import { beforeEach, describe, expect, it } from "vitest";
import { completeStage, openStage } from "#cli/machine/stage.ts";
import { prepareFolder, writeFiles } from "#cli/machine/writer.ts";

let folder = "";
const inFolder = (...names: readonly string[]) => path.join(folder, ...names);
const textOf = (...names: readonly string[]) => readFileSync(inFolder(...names), "utf8");

/** A set that a process began; ids above 2^22 belong to no process of Linux. */
function left(owner: { readonly host?: string; readonly process: number }): string {
  return openStage(folder, { host: hostname().replaceAll(/[^\w.]/gu, ""), ...owner });
}

beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), "blowcell-test-"));
});

describe("writing files", () => {
  it("makes the folder and leaves only the files in it", async () => {
    await writeFiles(inFolder("a", "b"), [
      { name: "one.csv", text: "1" },
      { name: "two.csv", text: "é" },
    ]);
    expect(readdirSync(inFolder("a", "b"))).toEqual(["one.csv", "two.csv"]);
    expect(textOf("a", "b", "two.csv")).toBe("é");
  });

  it("replaces files of the same names and no others", async () => {
    writeFileSync(inFolder("one.csv"), "old");
    writeFileSync(inFolder("notes.txt"), "mine");
    await writeFiles(folder, [{ name: "one.csv", text: "new" }]);
    expect([textOf("one.csv"), textOf("notes.txt")]).toEqual(["new", "mine"]);
    expect(readdirSync(folder)).toEqual(["notes.txt", "one.csv"]);
  });

  it("changes no file when one of them cannot be placed", async () => {
    writeFileSync(inFolder("a.csv"), "old");
    mkdirSync(inFolder("b.csv"));
    const files = [
      { name: "a.csv", text: "new" },
      { name: "b.csv", text: "new" },
    ];
    await expect(writeFiles(folder, files)).rejects.toThrow("a folder of that name is in the way (EISDIR)");
    expect(textOf("a.csv")).toBe("old");
    expect(readdirSync(folder)).toEqual(["a.csv", "b.csv"]);
  });

  it("reports a file in place of a folder", async () => {
    writeFileSync(inFolder("out"), "");
    await expect(writeFiles(inFolder("out"), [])).rejects.toThrow("a file of that name is in the way (EEXIST)");
    await expect(writeFiles(inFolder("out", "deeper"), [])).rejects.toThrow("a part of the path is a file");
  });

  it("requests a piece only after the previous ones are in the file", async () => {
    const sizes: number[] = [];
    const pieces = function* () {
      for (let i = 0; i < 3; i++) {
        const [stage = ""] = readdirSync(folder);
        sizes.push(lstatSync(inFolder(stage, "long.csv")).size);
        yield "x".repeat(1000);
      }
    };
    await writeFiles(folder, [{ name: "long.csv", text: pieces() }]);
    expect(sizes).toEqual([0, 1000, 2000]);
    expect(textOf("long.csv")).toBe("x".repeat(3000));
  });

  it("finishes a complete set that a killed process left, and never mixes it with the earlier one", () => {
    const stage = left({ process: 2 ** 22 + 1 });
    for (const name of ["a.csv", "b.csv", "old.csv"]) writeFileSync(inFolder(name), "old");
    writeFileSync(path.join(stage, "a.csv"), "new");
    completeStage(stage, ["old.csv"]);
    // Killed after the first file was in place.
    writeFileSync(inFolder("b.csv"), "new");
    prepareFolder(folder);
    expect([textOf("a.csv"), textOf("b.csv")]).toEqual(["new", "new"]);
    expect(readdirSync(folder)).toEqual(["a.csv", "b.csv"]);
  });

  it("removes an unfinished set of a killed process, and none of a running one", () => {
    writeFileSync(path.join(left({ process: 2 ** 22 + 1 }), "a.csv"), "half");
    const running = left({ process: process.pid });
    const elsewhere = left({ process: 2 ** 22 + 1, host: "another" });
    prepareFolder(folder);
    expect(readdirSync(folder).toSorted()).toEqual([running, elsewhere].map((each) => path.basename(each)).toSorted());
  });

  it("leaves nothing where it only prepares", () => {
    prepareFolder(inFolder("a", "b"));
    expect(readdirSync(folder)).toEqual([]);
  });

  it("replaces a link instead of writing through it", async () => {
    writeFileSync(inFolder("target.csv"), "mine");
    mkdirSync(inFolder("out"));
    symlinkSync(inFolder("target.csv"), inFolder("out", "a.csv"));
    await writeFiles(inFolder("out"), [{ name: "a.csv", text: "new" }]);
    expect(textOf("target.csv")).toBe("mine");
    expect(lstatSync(inFolder("out", "a.csv")).isSymbolicLink()).toBe(false);
  });

  it.each(["../a.csv", "/a.csv", "a/b.csv", "..", ".hidden", "nul.csv", ""])("refuses the name %j", async (name) => {
    await expect(writeFiles(inFolder("out"), [{ name, text: "" }])).rejects.toThrow("a file's name is safe");
    expect(readdirSync(folder)).toEqual([]);
  });
});
