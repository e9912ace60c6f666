// A scenario with one stop that comes often: a run of it measures what the stop costs, however rare it is.
import { distributionMean } from "#engine/distributions/moments.ts";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import type { Scenario, StopSpec } from "#scenario/scenario.ts";

/** Mean interval between two stops, in mean repairs: the resource is then repaired for about a fifth of the time. */
const repairsBetween = 4;
/** In one run; more would only take computing time. */
const mostStops = 50;
/** A stop that is long in any case comes at least this many times as often. */
const leastFactor = 4;

const frequent = new WeakMap<Scenario, Map<number, Scenario>>();

/** The same object for the same scenario and stop, so that its plan is made once. */
export function withFrequentStop(scenario: Scenario, index: number): Scenario {
  const known = frequent.get(scenario) ?? new Map<number, Scenario>();
  frequent.set(scenario, known);
  const found = known.get(index) ?? {
    ...scenario,
    stops: (scenario.stops ?? []).map((stop, i) => (i === index ? oftener(stop, scenario) : stop)),
  };
  known.set(index, found);
  return found;
}

function oftener(stop: StopSpec, scenario: Scenario): StopSpec {
  const wanted = Math.max(repairsBetween * distributionMean(stop.repair), scenario.run.length / mostStops);
  const { comes } = stop;
  if (comes.by === "cycles") {
    const { secondsPerShot } = idealCycle(scenario);
    const isStation = scenario.stations.some(({ name }) => name === stop.resource);
    const cycle = isStation ? secondsPerShot * scenario.stations.length : secondsPerShot;
    const cycles = Math.min(wanted / cycle, comes.cycles / leastFactor);
    return { ...stop, comes: { ...comes, cycles: Math.max(1, Math.round(cycles)) } };
  }
  const mean = Math.min(wanted, distributionMean(comes.between) / leastFactor);
  return { ...stop, comes: { ...comes, between: { kind: "exponential", mean } } };
}
