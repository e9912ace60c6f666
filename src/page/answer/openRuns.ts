// Runs one piece of the work of a study: some replications, or trial runs that find the warm-up.
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";
import { doWork, type Work } from "#analysis/replication/work.ts";
import type { PilotAnswer } from "#analysis/statistics/warmUpSearch.ts";

type WorkOf<Kind extends Work["kind"]> = Omit<Extract<Work, { readonly kind: Kind }>, "kind">;

export const openReplications = (work: WorkOf<"replications">): readonly ReplicationAnswer[] =>
  doWork({ kind: "replications", ...work });

export const openPilots = (work: WorkOf<"pilots">): readonly PilotAnswer[] => doWork({ kind: "pilots", ...work });
