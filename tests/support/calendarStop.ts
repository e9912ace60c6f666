// A cell with one stop at a known second, and the state changes of its resources.
import { EventLog } from "#engine/run/eventLog.ts";
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { cellText, scenarioOf } from "./cellScenario.ts";

export interface PlannedStop {
  readonly resource: string;
  readonly at: number;
  readonly repair: number;
  readonly step: "finish" | "hold" | "scrap";
  readonly by?: "itself" | "operator";
}

/** Recharge 4 s, drop 2 s, valve 1 s, close 1 s, blow 1 s, cool 6 s, vent 1 s, open 1 s, removal 1 s, clearing 3 s. */
export function stoppedCell(stop: PlannedStop, stations = 1): Scenario {
  const { resource, at, repair, step, by = "itself" } = stop;
  return scenarioOf(
    `${cellText(stations)}
crew: { operators: ${by === "operator" ? 1 : 0} }
stops: [{ name: fault, resource: ${resource}, clock: calendar, start: fresh, between: ${at} s, repair: ${repair} s, step: ${step}, by: ${by} }]`,
    "delivery.drop=2 s",
    "valve.shift=1 s",
    "stations.steps.close=1 s",
    "stations.steps.blow=1 s",
    "stations.steps.cool=6 s",
    "stations.steps.vent=1 s",
    "stations.steps.open=1 s",
    "stations.steps.remove.time=1 s",
    "stations.steps.clear={ time: 3 s }",
  );
}

/** Changes of state of a resource as "second state"; states of no duration are left out. */
export function changesOf(scenario: Scenario, resource: string, until: number): readonly string[] {
  const plan = planCell({ ...scenario, run: { ...scenario.run, length: until, warmup: 0 } });
  const log = new EventLog();
  runCell(plan, { replication: 1, log });
  const number = plan.program.table.resources.findIndex(({ name }) => name === resource);
  const entered = Array.from(log).filter(
    // A run goes on beyond its end to find what binds the waits that are still open.
    ({ resource: owner, time }) => owner === number && time < until * 1e6,
  );
  const lasting = entered.filter((event, i) => entered[i + 1]?.time !== event.time);
  return lasting
    .filter((event, i) => lasting[i - 1]?.state !== event.state)
    .map((event) => `${event.time / 1e6} ${plan.program.states[event.state]!.name}`);
}
