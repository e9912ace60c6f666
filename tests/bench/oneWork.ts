// Measures one task in a separate process, so that other tasks do not affect the compiler, and prints nanoseconds a unit.
import { readFileSync } from "node:fs";
import { invariant } from "#foundation/invariant.ts";
import { benchScenario, workLength } from "./benchScenario.ts";
import { median } from "./median.ts";
import { works, type Work, type WorkName } from "./works.ts";

/** Passes until the compiler has optimized the loop, a few tenths of a second for the whole model. */
const warmUps = 25;
const passes = 15;

const [name, scenarioFile] = process.argv.slice(2);
invariant(name !== undefined && name in works && scenarioFile !== undefined, "a work and a scenario are named", {
  name,
});
const work = works[name as WorkName](benchScenario(readFileSync(scenarioFile, "utf8"), workLength));
for (let pass = 0; pass < warmUps; pass++) work();
process.stdout.write(String(median(Array.from({ length: passes }, () => nanosecondsEach(work)))));

/** CPU time, because other processes use the machine as well. */
function nanosecondsEach(once: Work): number {
  const before = process.cpuUsage();
  const units = once();
  const { user, system } = process.cpuUsage(before);
  return ((user + system) * 1000) / units;
}
