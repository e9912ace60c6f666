// When an operator is away, on a break or off shift, and who of the crew is on call meanwhile.
import type { GiveSpec, NeedSpec, ProcessSpec, ShowSpec, StepSpec } from "#engine/compiler/stepTable.ts";
import type { AbsenceSpec, Scenario, StopSpec } from "#scenario/scenario.ts";
import { clockUntil, forEver, gone, isSame, lasting, OFF } from "#cell/words/calendarWords.ts";
import { operatorShow } from "#cell/table/crew.ts";
import { answeredByCrew, answeredOnCall, ON_CALL, stopsOnCall } from "./stopProcesses.ts";

/**
 * At the end of a shift nobody goes before the last parts are out. The first of the crew is there whenever anybody is: while he is
 * off shift nobody is there, and whoever went with him is the one on call.
 */
export function operatorCalendar(number: number, scenario: Scenario): ProcessSpec {
  const onCall = number === 0 ? stopsOnCall(scenario) : [];
  const steps = (scenario.calendar!.operators[number] ?? []).flatMap((absence) =>
    absence.why === OFF && onCall.length > 0 ? onCallMeanwhile(absence, scenario, onCall) : away(absence, scenario),
  );
  return { name: `shifts of operator ${number + 1}`, resource: `operator ${number + 1}`, steps: [...steps, forEver] };
}

function away(absence: AbsenceSpec, scenario: Scenario): readonly StepSpec[] {
  return [
    clockUntil(absence.from),
    { ...leaving(absence, scenario), time: lasting(absence.until) },
    {
      name: "come back",
      shows: [show("free")],
      gives: [{ place: "operators", carries: "hand" }],
      stoppedBy: [],
    },
  ];
}

const show = (state: string): ShowSpec => operatorShow(state);

function leaving({ from, until, why }: AbsenceSpec, { calendar, stations }: Scenario): StepSpec {
  const waits = calendar!.off.some((each) => isSame(each, { from, until, why }));
  return {
    name: why,
    needs: [
      { place: "operators", takes: "hand" },
      ...(waits ? stations.map(({ name }): NeedSpec => ({ place: gone(name) })) : []),
    ],
    priority: -1,
    shows: [show(why)],
    stoppedBy: [],
  };
}

/** Between his going and his coming back calls come to him instead of to the crew; he ends what he has begun. */
function onCallMeanwhile(absence: AbsenceSpec, scenario: Scenario, stops: readonly StopSpec[]): readonly StepSpec[] {
  const tokens = (place: (stop: StopSpec) => string): readonly { readonly place: string }[] =>
    stops.map((stop) => ({ place: place(stop) }));
  const leave = leaving(absence, scenario);
  const handOver = (place: string, answered: readonly GiveSpec[]): readonly GiveSpec[] => [
    { place, carries: "hand" },
    ...answered,
  ];
  return [
    clockUntil(absence.from),
    {
      ...leave,
      name: "leave",
      needs: [...leave.needs!, ...tokens(answeredByCrew)],
      gives: handOver(ON_CALL, tokens(answeredOnCall)),
    },
    { name: OFF, time: lasting(absence.until), stoppedBy: [] },
    {
      name: "come back",
      needs: [{ place: ON_CALL, takes: "hand" }, ...tokens(answeredOnCall)],
      shows: [show("free")],
      gives: handOver("operators", tokens(answeredByCrew)),
      stoppedBy: [],
    },
  ];
}
