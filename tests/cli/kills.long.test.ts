// Kills run, compare and page at random moments: a folder always holds one whole set of results, and nothing of the user is lost.
import { spawn } from "node:child_process";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { expect, it } from "vitest";
import { builtCommand, callBlowcell, newFolder, projectFolder } from "./callBlowcell.ts";

/** `KILLS=1000` sets another number. */
const kills = Number(process.env["KILLS"] ?? 60);
const brief = ["--length", "1 h", "--jobs", "1", "--quiet"];
const two = "scenarios/two-station.yaml";

/** Each makes one of two different sets in the same folder. */
const calls: Readonly<Record<string, (seed: string) => readonly string[]>> = {
  run: (seed) => ["run", two, "--replications", "2", "--seed", seed, "--replace", ...brief],
  compare: (seed) => [
    "compare",
    "scenarios/one-station.yaml",
    two,
    "--replications",
    "2",
    "--seed",
    seed,
    "--replace",
    ...brief,
  ],
  page: (seed) => ["page", seed === "a" ? two : "scenarios/one-station.yaml", "--replace", "--quiet"],
};

it.each(Object.keys(calls))(
  "%s leaves one whole set, and the next call tidies up",
  { timeout: 7_200_000 },
  async (name) => {
    const out = newFolder();
    const call = (seed: string): readonly string[] => [...calls[name]!(seed), "--out", out];
    const finish = (seed: string): Sums => {
      expect(callBlowcell(call(seed)).code).toBe(0);
      return filesIn(out);
    };
    const begun = performance.now();
    const sets = [finish("a"), finish("b")];
    const each = (performance.now() - begun) / 2;
    writeFileSync(path.join(out, "notes.txt"), "mine");
    let unfinished = 0;
    for (let i = 0; i < kills; i += 1) {
      // Half of them in the time in which files are written.
      const share = i % 2 === 0 ? Math.random() : 0.6 + 0.45 * Math.random();
      await killed(call(i % 3 === 0 ? "a" : "b"), share * each);
      const files = filesIn(out);
      expect(files.get("notes.txt")).toBe("mine");
      files.delete("notes.txt");
      // Those in place are of one set; the others of it come with the next call.
      const set = sets.find((whole) => [...files].every(([file, text]) => whole.get(file) === text));
      expect(set, `kill ${i}`).toBeDefined();
      unfinished += files.size < (set?.size ?? 0) ? 1 : 0;
    }
    expect(unfinished).toBeLessThan(kills / 10);
    const last = finish("a");
    last.delete("notes.txt");
    expect(last).toEqual(sets[0]);
    expect(readdirSync(out).filter((file) => file.startsWith("."))).toEqual([]);
  },
);

type Sums = Map<string, string>;

function filesIn(folder: string): Sums {
  const names = readdirSync(folder).filter((name) => !name.startsWith("."));
  return new Map(names.map((name) => [name, readFileSync(path.join(folder, name), "utf8")]));
}

function killed(call: readonly string[], milliseconds: number): Promise<void> {
  const child = spawn(process.execPath, [builtCommand, ...call], { cwd: projectFolder, stdio: "ignore" });
  const timer = setTimeout(() => child.kill("SIGKILL"), milliseconds);
  return new Promise((resolve) => {
    child.on("close", () => {
      clearTimeout(timer);
      resolve();
    });
  });
}
