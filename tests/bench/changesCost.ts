// The processor time of a run with its changes relative to that of the plain simulation, for every shipped scenario.
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { runChanges } from "#analysis/changes/runChanges.ts";
import { doWork } from "#analysis/replication/work.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import { settleInOneCall, studyOfSettled } from "#analysis/study/study.ts";
import { invariant } from "#foundation/invariant.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { ratioOf, type Figure } from "./figure.ts";
import type { Places } from "./places.ts";
import { takeTurns } from "./takeTurns.ts";

export function changesCost({ scenario }: Places, rounds: number): readonly Figure[] {
  const folder = path.join(path.dirname(scenario), "../../scenarios");
  const files = readdirSync(folder).filter((name) => name.endsWith(".yaml"));
  return files.flatMap((file) => {
    const { plain, whole } = takeTurns(worksOf(readFileSync(path.join(folder, file), "utf8"), file), rounds);
    const total = { name: `${file}, run with changes`, value: whole[0]!, unit: "s" as const };
    const limit = "limit 3, or 2 s in all";
    return [
      ratioOf(`${file}, run with changes / simulation`, whole, plain, limit),
      { ...total, meaning: "processor time of the study and its changes" },
    ];
  });
}

function worksOf(text: string, file: string): Readonly<Record<"plain" | "whole", () => number>> {
  const read = (set: readonly string[]): Scenario | undefined => readSettled(text, { name: file, file, set }).scenario;
  const given = read([]);
  invariant(given, "a shipped scenario can be read", { file });
  const settled = settleInOneCall(given);
  const { scenario } = settled;
  const tasks = Array.from({ length: given.run.replications }, (_, i) => ({ replication: i + 1, scale: null }));
  return {
    plain: () => cpuSeconds(() => doWork({ kind: "replications", scenario, tasks })),
    whole: () =>
      cpuSeconds(() => {
        const outcome = studyOfSettled(settled);
        invariant(outcome.kind === "found", "a shipped cell does not come to rest", { file });
        runChanges(outcome.study, given, read);
      }),
  };
}

function cpuSeconds(act: () => unknown): number {
  const before = process.cpuUsage();
  act();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}
