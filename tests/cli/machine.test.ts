// The command's reaction to signals, closed pipes, full disks and folders without write permission.
import { mkdirSync, mkdtempSync, readdirSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { builtCommand, newFolder } from "./callBlowcell.ts";
import { bundleLines, runHost } from "./runHost.ts";

const node = process.execPath;
/** Does what its first argument names. */
const acting = await bundleLines(`const [, , deed, given] = process.argv;
  const endless = function* () { yield "a"; host.report("begun\\n"); for (;;) yield "x".repeat(10000); };
  if (deed === "compute") require("node:fs").writeSync(2, "ready\\n");
  if (deed === "kill") process.kill(process.pid, given);
  // The thread is busy and never returns to Node.
  if (deed === "compute" || deed === "kill") for (;;);
  if (deed === "print") {
    host.report("ready\\n");
    for (let i = 0; i < 3e4; i++) { host.print("a line\\n"); await host.breathe(); }
  }
  if (deed === "write") await host.writeFiles(given, [{ name: "a.csv", text: "x".repeat(100000) }]);
  if (deed === "write on") await host.writeFiles(given, [{ name: "a.csv", text: endless() }])`);

const acts = (deed: Deed, given = ""): [string, ...string[]] => [node, acting, deed, given];
/** Those that write are given a folder; an endless file reports its start. */
type Deed = "compute" | "kill" | "print" | "write" | "write on";

describe("the command", () => {
  it.each([
    ["SIGINT", 130],
    ["SIGTERM", 143],
    ["SIGHUP", 129],
  ] as const)("ends quietly on %s, which a shell reports as %i (128 + its number, POSIX [M])", async (signal, code) => {
    const ending = await runHost(acts("compute"), (child) => child.kill(signal));
    expect(ending).toEqual({ code: null, signal, errors: "ready\n" });
    const { errors } = await runHost(["sh", "-c", `"${node}" "${acting}" kill ${signal}; echo $? >&2`]);
    expect(errors.trim().split("\n").at(-1)).toBe(String(code));
  });

  it.each([
    ["SIGINT", 130],
    ["SIGTERM", 143],
  ] as const)("removes its unfinished files on %s, and exits with %i at once", async (signal, code) => {
    const folder = newFolder();
    const ending = await runHost(acts("write on", path.join(folder, "new", "out")), (child) => child.kill(signal));
    expect(ending).toEqual({ code, signal: null, errors: "begun\n" });
    expect(readdirSync(folder)).toEqual([]);
    writeFileSync(path.join(folder, "mine.txt"), "");
    await runHost(acts("write on", folder), (child) => child.kill(signal));
    expect(readdirSync(folder)).toEqual(["mine.txt"]);
  });

  it("exits quietly when its reader closes the pipe", async () => {
    const ending = await runHost(acts("print"), (child) => child.stdout?.destroy());
    expect(ending).toEqual({ code: 0, signal: null, errors: "ready\n" });
  });

  it("exits quietly before `| head`", async () => {
    const ending = await runHost(["sh", "-c", `"${node}" "${builtCommand}" --help | head -n 1; echo done >&2`]);
    expect(ending).toEqual({ code: 0, signal: null, errors: "done\n" });
  });

  // Linux's /dev/full acts as a full disk.
  it("exits with 74 when standard output goes to a full disk", async () => {
    const ending = await runHost(["sh", "-c", `"${node}" "${builtCommand}" --help > /dev/full`]);
    expect(ending.code).toBe(74);
    expect(ending.errors).toBe("blowcell: cannot write to standard output: the disk is full (ENOSPC)\n");
  });

  it("exits with 74 and writes nothing to a folder without write permission", async () => {
    const folder = newFolder();
    const closed = path.join(folder, "closed");
    mkdirSync(closed, { mode: 0o555 });
    // Root may write everywhere, so the call is made as another user.
    const ending = await runHost(acts("write", closed), undefined, process.getuid?.() === 0 ? 65_534 : undefined);
    expect(ending.code).toBe(74);
    expect(ending.errors).toContain("you may not write there (EACCES)");
    expect(ending.errors).toContain("    remedy    Name a folder that you may write to.");
    expect(ending.errors).not.toMatch(/^ +at /m);
  });

  it("exits with 74 and no half-written file when writing fails midway", async () => {
    const folder = mkdtempSync(path.join(tmpdir(), "blowcell-test-"));
    const out = path.join(folder, "new", "out");
    // The limit is 10 blocks of 512 bytes.
    const ending = await runHost(["sh", "-c", `ulimit -f 10; exec "${node}" "${acting}" write "${out}"`]);
    expect(ending.code).toBe(74);
    expect(ending.errors).toContain("(EFBIG)");
    expect(readdirSync(folder)).toEqual([]);
  });
});
