// A process of its own for a simulated year of the cell in one replication: prints its CPU time and its peak of memory.
import { readFileSync } from "node:fs";
import { planCell } from "#cell/planCell.ts";
import { runCell } from "#cell/runCell.ts";
import { invariant } from "#foundation/invariant.ts";
import { benchScenario } from "./benchScenario.ts";

const record = runCell(planCell(benchScenario(readFileSync(process.argv[2]!, "utf8"), "365 d")), {
  replication: 0,
  keepsShots: false,
});
const shots = record.stations.reduce((sum, station) => sum + station.shots, 0);
invariant(record.standstill === undefined && shots > 1e6, "the cell makes shots all year", { shots });
const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
process.stdout.write(JSON.stringify({ seconds: (userCPUTime + systemCPUTime) / 1e6, megabytes: maxRSS / 1000 }));
