// Joins the journals of the shares of a sweep; a share that is missing or belongs to another sweep is an issue.
import type { Issue, IssueMeaning } from "#foundation/issue.ts";
import type { PointRecord, SweepPlan, SweepRecord } from "./sweepRecord.ts";

export const mergeIssueCodes = {
  "merge-none": ["a folder has no share of a sweep", "Name the folders that sweep --shard wrote."],
  "merge-other": ["two folders have shares of different sweeps", "Merge shares of one file, with the same settings."],
  "merge-missing": [
    "points of the sweep are in none of the folders",
    "Name the folders of all shares, or finish them.",
  ],
  "merge-differs": ["two folders have different results of one point", "Make the shares with one version of the file."],
} as const satisfies Readonly<Record<string, IssueMeaning>>;

export interface Share {
  readonly folder: string;
  readonly records: readonly SweepRecord[];
}

export interface Merged {
  readonly plan: SweepPlan;
  readonly records: readonly PointRecord[];
}

export function mergeShares(shares: readonly Share[]): Merged | readonly Issue[] {
  const plans = shares.map(({ records }) => wholePlan(records));
  const empty = shares.filter((_, i) => plans[i] === undefined);
  if (empty.length > 0) return empty.map(({ folder }) => issueOf("merge-none", `${folder} has no share of a sweep`));
  const [plan] = plans;
  if (!plan) return [issueOf("merge-none", "no folder is named")];
  const others = shares.filter((_, i) => JSON.stringify(plans[i]) !== JSON.stringify(plan));
  const first = shares[0]?.folder ?? "";
  if (others.length > 0) {
    return others.map(({ folder }) => issueOf("merge-other", `${folder} has a share of another sweep than ${first}`));
  }
  return joined(plan, shares);
}

/** Without its share. */
function wholePlan(records: readonly SweepRecord[]): SweepPlan | undefined {
  const found = records.find((record) => record.kind === "plan");
  if (!found) return undefined;
  const { shard: _, ...plan } = found;
  return plan;
}

function joined(plan: SweepPlan, shares: readonly Share[]): Merged | readonly Issue[] {
  const found = new Map<number, PointRecord>();
  for (const { folder, records } of shares) {
    for (const record of records) {
      if (record.kind !== "point") continue;
      const before = found.get(record.index);
      if (before && JSON.stringify(before) !== JSON.stringify(record)) {
        return [
          issueOf("merge-differs", `${folder} has another result of point ${record.index + 1} than an earlier folder`),
        ];
      }
      found.set(record.index, record);
    }
  }
  const missing = Array.from({ length: plan.points }, (_, i) => i).filter((i) => !found.has(i));
  if (missing.length === 0) return { plan, records: [...found.values()] };
  const message = `${missing.length} of ${plan.points} points are missing, the first is point ${missing[0]! + 1}`;
  return [issueOf("merge-missing", message)];
}

function issueOf(code: keyof typeof mergeIssueCodes, message: string): Issue {
  const [, remedy] = mergeIssueCodes[code];
  return { code, severity: "error", fate: "file", path: "", message, remedy };
}
