// Scratch.
import { test } from "vitest";
import { readFileSync } from "node:fs";
import { readSettled } from "#analysis/study/readSettled.ts";
import { drillKinds } from "#report/drills/drillKinds.ts";
test("x", () => {
  const read = (file: string, set: readonly string[] = []) => {
    const r = readSettled(readFileSync("scenarios/lessons/drills/" + file, "utf8"), { name: file, file, set });
    if (!r.scenario) throw new Error(JSON.stringify(r.issues));
    return r.scenario;
  };
  for (const k of drillKinds) {
    const t0 = performance.now();
    const ds = k.make(read);
    console.log("#####", k.title, ds.length, (performance.now() - t0).toFixed(0), "ms");
    for (const d of ds) { console.log("LOOK", d.look); for (const c of d.charts) console.log("  chart", c.title, c.from.toFixed(2), c.at.toFixed(2), c.until.toFixed(2)); console.log("  ASK", d.exercise.ask); for (const c of d.exercise.choices) console.log(c.isRight ? "   [x]" : "   [ ]", c.text, "--", c.because); }
  }
});
