// Scratch.
import { test } from "vitest";
import { readFileSync, readdirSync } from "node:fs";
import { readLesson } from "#report/lessons/readLesson.ts";
import { runOnce } from "#report/lessons/spells.ts";
import { solveLesson } from "#report/lessons/solveLesson.ts";
test("x", () => {
  for (const file of process.env.L ? [process.env.L] : readdirSync("scenarios/lessons").filter((f) => f.endsWith("yaml"))) {
    const r = readLesson(readFileSync("scenarios/lessons/" + file, "utf8"), { name: file, file, readText: (p) => { try { return readFileSync("scenarios/lessons/" + p, "utf8"); } catch { return undefined; } } });
    if (!r.lesson) { console.log(file, JSON.stringify(r.issues, null, 1)); continue; }
    const runs = new Map([...r.lesson.cells].map(([n, s]) => [n, runOnce(s)]));
    const s = solveLesson(r.lesson, runs);
    if (!s.solved) { console.log(file, s.findings.map(r.toIssue)); continue; }
    console.log("#####", file, s.solved.title, "|", s.solved.goal);
    const q = (e: { ask: string; choices: readonly { text: string; isRight: boolean; because: string }[] }) => { console.log("  ASK", e.ask); for (const c of e.choices) console.log(c.isRight ? "   [x]" : "   [ ]", c.text, "--", c.because); };
    for (const st of s.solved.stages) { console.log("--", st.cell, st.resource, st.from.toFixed(2), st.at.toFixed(2), st.until.toFixed(2)); console.log("  LOOK", st.look); q(st.predict); console.log("  REVEAL", st.reveal, "\n  EXPLAIN", st.explain); }
    console.log("== "); q(s.solved.question);
  }
});
