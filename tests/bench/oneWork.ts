// A process of its own for one work, so that no other work has a say in what the compiler makes of it: prints nanoseconds a unit.
import { readFileSync } from "node:fs";
import { invariant } from "#foundation/invariant.ts";
import { benchScenario } from "./benchScenario.ts";
import { median } from "./median.ts";
import { works, type Work, type WorkName } from "./works.ts";

const length = "3 d";
/** Until the compiler has done its last: the loop of the whole model takes it a few tenths of a second. */
const warmUps = 25;
const passes = 15;

const [name, scenarioFile] = process.argv.slice(2);
invariant(name !== undefined && name in works && scenarioFile !== undefined, "a work and a scenario are named", {
  name,
});
const work = works[name as WorkName](benchScenario(readFileSync(scenarioFile, "utf8"), length));
for (let pass = 0; pass < warmUps; pass++) work();
process.stdout.write(String(median(Array.from({ length: passes }, () => nanosecondsEach(work)))));

/** CPU time, as others use the machine too. */
function nanosecondsEach(once: Work): number {
  const before = process.cpuUsage();
  const units = once();
  const { user, system } = process.cpuUsage(before);
  return ((user + system) * 1000) / units;
}
