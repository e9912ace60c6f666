// Planned changes of mold, material or color: who must stand still for them, the hands' work, and the purge, which a start wants as well.
import type { ProcessSpec, StepSpec } from "#engine/compiler/stepTable.ts";
import type { ChangeSpec, Scenario } from "#scenario/scenario.ts";
import { clockUntil, forEver, mayStart, SCREW } from "#cell/words/calendarWords.ts";
import { PLASTICATOR, purgedCounter } from "#cell/words/cycleNames.ts";
import { purgeOfChange, purgeTime } from "./purge.ts";
import { fixed } from "#cell/words/tableWords.ts";

/** What the screw shows when it has nothing else to do. */
export function restState({ delivery }: Scenario): string {
  return delivery.kind === "continuous" ? "extruding to regrind" : "holding a full shot";
}

export function purge(kilograms: number, stream: string, scenario: Scenario): StepSpec {
  const milligrams = Math.round(kilograms * 1e6);
  return {
    name: "purge",
    shows: [{ resource: PLASTICATOR, state: "purging" }],
    time: purgeTime(milligrams, stream, scenario),
    counts: { [purgedCounter]: milligrams },
    stoppedBy: [],
  };
}

/** A mold is changed at its station; another material or color wants every mold empty, and the screw and all manifolds purged. */
export function changeProcess(change: ChangeSpec, scenario: Scenario): ProcessSpec {
  const concerned = scenario.stations.filter(({ name }) => change.station === undefined || name === change.station);
  const isWhole = change.station === undefined;
  const all = [...concerned.map(({ name }) => mayStart(name)), ...(isWhole ? [SCREW] : [])];
  const mass = purgeOfChange(change, scenario);
  const hands: StepSpec = {
    name: change.name,
    shows: isWhole ? [{ resource: PLASTICATOR, state: "changeover" }] : [],
    time: fixed(change.time),
    stoppedBy: [],
  };
  return {
    name: `change: ${change.name}`,
    resource: isWhole ? PLASTICATOR : change.station,
    steps: [
      clockUntil(change.at),
      ...concerned.map(({ name }): StepSpec => ({
        name: `await ${name}`,
        needs: [{ place: mayStart(name) }],
        shows: [{ resource: name, state: "changeover" }],
        stoppedBy: [],
      })),
      ...(isWhole ? [{ name: "await the screw", needs: [{ place: SCREW }], stoppedBy: [] }] : []),
      hands,
      ...(mass > 0 ? [purge(mass, `purge: ${change.name}`, scenario)] : []),
      {
        name: "go on",
        shows: isWhole ? [{ resource: PLASTICATOR, state: restState(scenario) }] : [],
        gives: all.map((place) => ({ place })),
        stoppedBy: [],
      },
      forEver,
    ],
  };
}
