// Simulates a year of the cell in a separate process with all measures of a report, and prints CPU time and peak memory.
import { readFileSync } from "node:fs";
import { replicationRunner } from "#analysis/replication/runReplication.ts";
import { countOf } from "#cell/records/countedTimes.ts";
import { invariant } from "#foundation/invariant.ts";
import { benchScenario } from "./benchScenario.ts";

// The first replication, because its cycles are counted.
const answer = replicationRunner(benchScenario(readFileSync(process.argv[2]!, "utf8"), "365 d"))({
  replication: 1,
  scale: null,
});
const cycles = answer.cycles.reduce((sum, { times }) => sum + countOf(times), 0);
invariant(answer.standstill === null && cycles > 1e6, "the cell makes shots all year", { cycles });
const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
process.stdout.write(JSON.stringify({ seconds: (userCPUTime + systemCPUTime) / 1e6, megabytes: maxRSS / 1000 }));
