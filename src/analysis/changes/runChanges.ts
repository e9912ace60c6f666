// All changes of a cell in one call.
import { doWork } from "#analysis/replication/work.ts";
import type { Scenario } from "#scenario/scenario.ts";
import type { Base } from "./base.ts";
import type { Changes } from "./changes.ts";
import { concludeChanges } from "./concludeChanges.ts";
import { concludeLost } from "./concludeLost.ts";
import type { Lost } from "./lost.ts";
import type { Vary } from "./levers.ts";
import type { ChangesDepth } from "./effort.ts";
import { beginChanges, changesWanted, withTrialAnswers } from "./procedure.ts";

/** What one change buys, and the lost parts, which share their runs. `given` is the scenario as its text has it, `base` the study of it. */
export function runChanges(
  base: Base,
  given: Scenario,
  vary: Vary,
  depth: ChangesDepth = "few",
): { readonly changes: Changes; readonly lost: Lost | null } {
  let state = beginChanges(base, vary, depth);
  for (let wanted = changesWanted(state); wanted.length > 0; wanted = changesWanted(state)) {
    for (const { trial, tasks } of wanted) {
      const { scenario } = state.trials[trial]!;
      state = withTrialAnswers(state, trial, doWork({ kind: "replications", scenario, tasks }));
    }
  }
  return { changes: concludeChanges(state, given.run), lost: concludeLost(state) };
}
