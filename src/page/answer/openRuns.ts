// Runs one piece of the work of a study: some replications, or trial runs that find the warm-up.
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";
import { doWork, type Work } from "#analysis/replication/work.ts";
import type { PilotAnswer } from "#analysis/statistics/warmUpSearch.ts";
import type { Scenario } from "#scenario/scenario.ts";

type WorkOf<Kind extends Work["kind"]> = Omit<Extract<Work, { readonly kind: Kind }>, "kind">;

export const openReplications = ({ scenario, tasks }: WorkOf<"replications">): readonly ReplicationAnswer[] =>
  doWork({ kind: "replications", scenario: sameAsBefore(scenario), tasks });

export const openPilots = ({ scenario, tasks }: WorkOf<"pilots">): readonly PilotAnswer[] =>
  doWork({ kind: "pilots", scenario: sameAsBefore(scenario), tasks });

let before: { readonly text: string; readonly scenario: Scenario } | undefined;

/** The plan of a scenario is kept with the object, and each message brings another object. */
function sameAsBefore(scenario: Scenario): Scenario {
  const text = JSON.stringify(scenario);
  if (before?.text !== text) before = { text, scenario };
  return before.scenario;
}
