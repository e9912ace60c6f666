// Breaks and off-shift times of an operator, and the operator on call meanwhile.
import type { GiveSpec, NeedSpec } from "#engine/compiler/stepTable.ts";
import type { AbsenceSpec, Scenario, StopSpec } from "#scenario/scenario.ts";
import { byTimetable, isOffShift, restsOf, whileAway } from "#cell/words/calendarWords.ts";
import type { CellProcess, CellStep } from "#cell/words/cellTable.ts";
import { operatorName } from "#cell/words/cycleNames.ts";
import { lastPartsOut, OPERATORS } from "#cell/words/placeNames.ts";
import { stateNames } from "#cell/words/stateNames.ts";
import { named } from "#cell/words/stepNames.ts";
import { operatorShow } from "#cell/table/crew.ts";
import { answeredByCrew, answeredOnCall, ON_CALL, stopsOnCall } from "./stopProcesses.ts";

/**
 * Operators leave at the end of a work shift when the last parts are removed. The first operator is present whenever any operator is.
 * Off shift the first operator is on call.
 */
export function operatorCalendar(number: number, scenario: Scenario): CellProcess {
  const onCall = number === 0 ? stopsOnCall(scenario) : [];
  const restsOfCell = restsOf(scenario.calendar!.off);
  const turns = (scenario.calendar!.operators[number] ?? []).map((absence) => {
    const leave = leaving(absence, scenario, isOffShift(absence) && restsOfCell.has(absence.from));
    const steps = isOffShift(absence) && onCall.length > 0 ? onCallMeanwhile(leave, onCall) : away(absence, leave);
    return { from: absence.from, until: absence.until, steps };
  });
  const resource = operatorName(number);
  return { name: `shifts of ${resource}`, kind: "calendar", resource, ...byTimetable(turns) };
}

function away(absence: AbsenceSpec, leave: Leaving): readonly CellStep[] {
  return [
    { ...named(isOffShift(absence) ? "calendar.off" : "crew.onBreak"), ...leave, time: whileAway },
    {
      ...named("crew.return"),
      shows: [operatorShow(stateNames.free)],
      gives: [{ place: OPERATORS, carries: "helper" }],
      stoppedBy: [],
    },
  ];
}

type Leaving = Pick<CellStep, "priority" | "shows" | "stoppedBy"> & { readonly needs: readonly NeedSpec[] };

/** `waits`: until the last parts are out, since the cell rests as well. */
function leaving(absence: AbsenceSpec, { stations }: Scenario, waits: boolean): Leaving {
  return {
    needs: [
      { place: OPERATORS, takes: "helper" },
      ...(waits ? stations.map(({ name }): NeedSpec => ({ place: lastPartsOut(name) })) : []),
    ],
    priority: -1,
    shows: [operatorShow(absence.why)],
    stoppedBy: [],
  };
}

/** While the operator is off shift, they answer the calls instead of the crew. A repair that has begun is finished. */
function onCallMeanwhile(leave: Leaving, stops: readonly StopSpec[]): readonly CellStep[] {
  const tokens = (place: (stop: StopSpec) => string): readonly { readonly place: string }[] =>
    stops.map((stop) => ({ place: place(stop) }));
  const handOver = (place: string, answered: readonly GiveSpec[]): readonly GiveSpec[] => [
    { place, carries: "helper" },
    ...answered,
  ];
  return [
    {
      ...named("crew.leave"),
      ...leave,
      needs: [...leave.needs, ...tokens(answeredByCrew)],
      gives: handOver(ON_CALL, tokens(answeredOnCall)),
    },
    { ...named("calendar.off"), time: whileAway, stoppedBy: [] },
    {
      ...named("crew.return"),
      needs: [{ place: ON_CALL, takes: "helper" }, ...tokens(answeredOnCall)],
      shows: [operatorShow(stateNames.free)],
      gives: handOver(OPERATORS, tokens(answeredByCrew)),
      stoppedBy: [],
    },
  ];
}
