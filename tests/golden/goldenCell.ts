// A cell with every kind of distribution, and the numbers of its run.
import { planCell } from "#cell/layers/planCell.ts";
import { runCell } from "#cell/run/runCell.ts";
import type { Distribution } from "#engine/distributions/distribution.ts";
import type { Scenario, StationSpec } from "#scenario/scenario.ts";

const fixed = (value: number): Distribution => ({ kind: "fixed", value });

const left: StationSpec = {
  name: "left",
  cavities: 2,
  product: "bottle",
  partMass: 0.042,
  flashMass: 0.0126,
  drop: { by: "rate", rate: { kind: "normal", mean: 0.1, sd: 0.01 } },
  recharge: { by: "rate", rate: { kind: "triangular", min: 0.02, mode: 0.025, max: 0.032 } },
  close: { kind: "uniform", min: 0.5, max: 0.7 },
  blow: { kind: "exponential", mean: 0.5 },
  cool: { kind: "lognormal", mean: 7.5, sd: 0.8 },
  vent: { kind: "weibull", scale: 0.5, shape: 2.3 },
  open: { kind: "empirical", values: [0.55, 0.6, 0.6, 0.8] },
  remove: { time: { kind: "gamma", mean: 2.5, sd: 0.9 }, by: "operator" },
  extra: [{ name: "pin down", after: "close", time: fixed(0.3) }],
  priority: 1,
};

const scenario: Scenario = {
  name: "every-distribution",
  title: "Every distribution",
  delivery: { kind: "reciprocating-screw", rechargeStarts: "mold-closed", shotFor: "served" },
  valve: { shift: { kind: "uniform", min: 0.2, max: 0.4 }, dispatch: "longest-since-drop" },
  stations: [left, { ...left, name: "middle", cool: { kind: "normal", mean: 7, sd: 4 } }, { ...left, name: "right" }],
  operators: 1,
  run: { length: 36_000, replications: 1, seed: "golden", warmup: 600, start: "cold" },
};

/** The ticks of every shot, state and critical step. */
export function goldenNumbers(): string {
  const record = runCell(planCell(scenario), { replication: 1 });
  const numbers = [
    ...record.stations.flatMap((station) => station.shotTicks),
    ...record.stateTimes.map((each) => each.ticks),
    ...record.chain.flatMap((each) => each.ticksByStation),
  ];
  return numbers.join(" ");
}
