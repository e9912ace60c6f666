// The points that a sweep of 200 points makes in a second, with one job and with two.
import path from "node:path";
import { ratioOf, type Figure } from "./figure.ts";
import { median } from "./median.ts";
import { runNode, type Places } from "./places.ts";
import { takeTurns } from "./takeTurns.ts";

const vary = ["stations.*.steps.cool=7..8 s/20", "delivery.plasticatingRate=90..110 kg/h/10"];
const points = 200;

export function sweepCost(places: Places, rounds: number): readonly Figure[] {
  const withJobs = (jobs: number) => (): number => wallSeconds(places, jobs);
  const { one, two } = takeTurns({ one: withJobs(1), two: withJobs(2) }, rounds);
  const rate = (seconds: readonly number[]): number => points / median(seconds);
  return [
    {
      name: "sweep, one job",
      value: rate(one),
      unit: "points/s",
      meaning: "200 points of 20 replications of one shift",
    },
    { name: "sweep, two jobs", value: rate(two), unit: "points/s", meaning: "the same" },
    ratioOf("sweep, one job / two jobs", one, two, "wall time; 2 is the ideal"),
  ];
}

function wallSeconds({ commandLine, scenario, folder }: Places, jobs: number): number {
  const call = [commandLine, "sweep", scenario, "--length", "8 h", "--replications", "20", "--jobs", String(jobs)];
  const before = process.hrtime.bigint();
  runNode([
    ...call,
    ...vary.flatMap((each) => ["--vary", each]),
    "--quiet",
    "--replace",
    "--out",
    path.join(folder, "sweep"),
  ]);
  return Number(process.hrtime.bigint() - before) / 1e9;
}
