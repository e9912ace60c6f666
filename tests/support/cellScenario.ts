// The text of a small cell, and the scenario of a text.
import { readScenario } from "#scenario/resolving/readScenario.ts";
import type { Scenario } from "#scenario/scenario.ts";

/** Recharge 4 s, drop 1.8 s, valve shift 0.25 s, close 0.6 s, mold time after the drop 11 s. */
export function cellText(stations: number, changes = ""): string {
  return `format: 1
product: { partMass: 42 g, flash: 30 % of part }
delivery: { kind: reciprocating-screw, recharge: 4 s, drop: 1.8 s }
valve: { shift: 0.25 s }
stations:
  count: ${stations}
  cavities: 2
  steps: { close: 0.6 s, blow: 0.5 s, cool: 8 s, vent: 0.5 s, open: 0.6 s, remove: { time: 0.8 s } }
run: { length: 2 h, replications: 3, seed: test, warmup: 10 min }
${changes}`;
}

/** Each text of `set` has the form `path=value`. */
export function scenarioOf(text: string, ...set: readonly string[]): Scenario {
  const { scenario, issues } = readScenario(text, { name: "test", file: "test.yaml", set });
  if (scenario === undefined) throw new Error(JSON.stringify(issues, undefined, 2));
  return scenario;
}
