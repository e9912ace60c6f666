// Answers of replications and a study, written down without a run.
import type { BottleneckResource } from "#analysis/bottleneck/bottleneck.ts";
import type { Base } from "#analysis/changes/base.ts";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import type { ReplicationAnswer } from "#analysis/replication/replicationAnswer.ts";
import { meanInterval } from "#analysis/statistics/interval.ts";
import type { Scenario } from "#scenario/scenario.ts";

/** Measures of the cell by name; a station has the same of 7 each. */
export type Amounts = Readonly<Record<string, number>>;

export function answerMade(
  replication: number,
  amounts: Amounts,
  more: Partial<ReplicationAnswer> = {},
): ReplicationAnswer {
  return {
    task: { replication, scale: null },
    measures: ["side", "cell"].flatMap((resource) =>
      Object.entries(amounts).map(([measure, value]) => ({
        resource,
        measure,
        unit: "1/h",
        value: resource === "cell" ? value : 7,
      })),
    ),
    resin: null,
    stateShares: [],
    elementTimes: [],
    criticalShares: [],
    longestActive: [],
    parisons: [],
    cycles: [],
    standstill: null,
    ...more,
  };
}

/** One replication a value of good parts, which are all parts. */
export function answersOf(parts: readonly number[]): readonly ReplicationAnswer[] {
  return parts.map((value, i) => answerMade(i + 1, { "good parts per hour": value, "parts per hour": value }));
}

/** A study of which only the cell's measures are known: by name the values of its replications. */
export function baseMade(
  scenario: Scenario,
  values: Readonly<Record<string, readonly number[]>>,
  more: Partial<Base> = {},
): Base {
  const [first = []] = Object.values(values);
  return {
    scenario,
    replications: first.length,
    measures: ["side", "cell"].flatMap((resource) =>
      Object.entries(values).map(([measure, each]) => {
        const own = each.map((value) => (resource === "cell" ? value : 7));
        return { resource, measure, values: own, interval: meanInterval(own) };
      }),
    ),
    bottleneck: [],
    stops: [],
    costs: null,
    ideal: idealCycle(scenario),
    ...more,
  };
}

/** A resource with the shares that its steps have of the critical path. */
export function pathOf(
  group: string,
  resources: readonly string[],
  steps: readonly { readonly role: string; readonly share: number; readonly resources?: readonly string[] }[],
): BottleneckResource {
  const shareOf = (mean: number) => ({ ...meanInterval([mean]) });
  return {
    group,
    resources,
    share: shareOf(steps.reduce((sum, { share }) => sum + share, 0)),
    isTied: false,
    tiedShare: 0,
    utilization: 0,
    activeShare: 0,
    longestActiveShare: 0,
    longestActiveAlone: 0,
    slackPerShot: null,
    steps: steps.map(({ role, share, ...own }) => ({
      step: role,
      role: role as never,
      resources: own.resources ?? resources,
      share: shareOf(share),
      tiedShare: 0,
      slackSeconds: null,
      elasticity: null,
      elasticityMethod: "",
    })),
  };
}
