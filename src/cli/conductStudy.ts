// Has a study's replications run, one after the other, until it wants no more; it decides nothing itself.
import { replicationRunner } from "#analysis/runReplication.ts";
import { beginStudy, concludeStudy, nextWanted, withAnswer, type StudyOutcome } from "#analysis/study.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { Host } from "./host.ts";

export async function conductStudy(scenario: Scenario, host: Host): Promise<StudyOutcome> {
  const run = replicationRunner(scenario);
  let state = beginStudy(scenario);
  for (let wanted = nextWanted(state); wanted.length > 0; wanted = nextWanted(state)) {
    for (const task of wanted) {
      state = withAnswer(state, run(task));
      await host.breathe();
    }
  }
  return concludeStudy(state);
}
