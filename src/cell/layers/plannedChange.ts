// Planned changes of mold, material or color: what must stand still, the work and the purge; a start-up uses the same purge.
import type { ChangeSpec, Scenario } from "#scenario/scenario.ts";
import { clockUntil, forEver } from "#cell/words/calendarWords.ts";
import type { CellProcess, CellStep } from "#cell/words/cellTable.ts";
import { PLASTICATOR, purgedCounter } from "#cell/words/cycleNames.ts";
import { mayStart, SCREW_MAY_WORK } from "#cell/words/placeNames.ts";
import { stateNames, type StateName } from "#cell/words/stateNames.ts";
import { named, namedAfter } from "#cell/words/stepNames.ts";
import { purgeOfChange, purgeTime } from "./purge.ts";
import { fixed } from "#cell/words/tableWords.ts";

/** The state of the screw while it has no work. */
export function restState({ delivery }: Scenario): StateName {
  return delivery.kind === "continuous" ? stateNames.extrudingToRegrind : stateNames.holdingShot;
}

export function purge(kilograms: number, stream: string, scenario: Scenario): CellStep {
  const milligrams = Math.round(kilograms * 1e6);
  return {
    ...named("screw.purge"),
    shows: [{ resource: PLASTICATOR, state: stateNames.purging }],
    time: purgeTime(milligrams, stream, scenario),
    counts: { [purgedCounter]: milligrams },
    stoppedBy: [],
  };
}

/** A mold change stops its station only. A change of material or color needs every mold empty, and purges screw and manifolds. */
export function changeProcess(change: ChangeSpec, scenario: Scenario): CellProcess {
  const concerned = scenario.stations.filter(({ name }) => change.station === undefined || name === change.station);
  const isWhole = change.station === undefined;
  const all = [...concerned.map(({ name }) => mayStart(name)), ...(isWhole ? [SCREW_MAY_WORK] : [])];
  const mass = purgeOfChange(change, scenario);
  const work: CellStep = {
    role: "change.work",
    name: change.name,
    shows: isWhole ? [{ resource: PLASTICATOR, state: stateNames.changeover }] : [],
    time: fixed(change.time),
    stoppedBy: [],
  };
  return {
    name: `change: ${change.name}`,
    kind: "change",
    resource: isWhole ? PLASTICATOR : change.station,
    steps: [
      clockUntil(change.at),
      ...concerned.map(({ name }): CellStep => ({
        ...namedAfter("change.await", name),
        needs: [{ place: mayStart(name) }],
        shows: [{ resource: name, state: stateNames.changeover }],
        stoppedBy: [],
      })),
      ...(isWhole ? [{ ...named("change.awaitScrew"), needs: [{ place: SCREW_MAY_WORK }], stoppedBy: [] }] : []),
      work,
      ...(mass > 0 ? [purge(mass, `purge: ${change.name}`, scenario)] : []),
      {
        ...named("change.end"),
        shows: isWhole ? [{ resource: PLASTICATOR, state: restState(scenario) }] : [],
        gives: all.map((place) => ({ place })),
        stoppedBy: [],
      },
      forEver,
    ],
  };
}
