// Scratch.
import { test } from "vitest";
import { readFileSync } from "node:fs";
import { readSettled } from "#analysis/study/readSettled.ts";
import { runOnce } from "#report/lessons/spells.ts";
import { shotRecords } from "#cell/records/shotRecord.ts";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
test("x", () => {
  const file = process.env.FILE!;
  const r = readSettled(readFileSync(file, "utf8"), { name: "x", file, set: JSON.parse(process.env.SET ?? "[]"), run: { length: process.env.LEN ?? "1 min" } });
  if (r.issues.length) console.log(r.issues);
  const run = runOnce(r.scenario!);
  const only = process.env.ONLY;
  for (const s of run.spells) if (!only || new RegExp(only).test(s.resource)) console.log(s.resource.padEnd(14), s.state.padEnd(26), s.start.toFixed(3), s.end?.toFixed(3), s.station, s.shot, "by", s.startedBy, "freed", s.freedBy);
  const i = idealCycle(r.scenario!); console.log(i.method, i.secondsPerShot, i.circuits.map(c => [c.name, JSON.stringify(c.owner), c.secondsPerShot]));
  console.log(shotRecords(run.events, run.scenario).slice(0, 5));
});
