// The shots that the events of an accumulator head name: the ram follows up the shot that it delivered last.
import { expect, it } from "vitest";
import { eventRecorder } from "#cell/records/eventRecord.ts";
import { settledScenario } from "../report/scene/shippedScenes.ts";

it.each(["cold", "running"] as const)("are those delivered last while it fills, none before the first: %s", (start) => {
  const scenario = settledScenario("scenarios/canister-accumulator-head.yaml");
  const delivered = new Map<string, number | null>();
  let fillings = 0;
  for (const event of eventRecorder({ ...scenario, run: { ...scenario.run, start, length: 900 } })(1)) {
    if (event.owner !== "ram") continue;
    if (event.state === "delivering") delivered.set(event.resource, event.shot);
    if (event.state !== "filling") continue;
    expect(event.shot, `${event.resource} at ${event.seconds} s`).toBe(delivered.get(event.resource) ?? null);
    fillings += 1;
  }
  expect(fillings).toBeGreaterThan(10);
  // Who starts cold fills before anything is delivered.
  expect([...delivered.values()].every((shot) => shot !== null && shot > 1)).toBe(true);
});
