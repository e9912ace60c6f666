// Changes that make or remove what disturbs a cell: stops, cold starts, breaks and planned changes.
import type { CalendarSpec, ChangeSpec, Scenario } from "#scenario/scenario.ts";
import type { Wish } from "./wish.ts";

export function disturbanceWishes(scenario: Scenario): readonly Wish[] {
  const { stops = [], changes = [], startUp, calendar } = scenario;
  const names = [...new Set(stops.map(({ name }) => name))];
  const kinds = [...new Set(changes.map(({ kind }) => kind))];
  const hasBreaks = calendar !== undefined && calendar.shifts.some(({ breaks }) => breaks.length > 0);
  const wishes = [
    ...names.flatMap(stopWishes),
    ...kinds.map((kind) => changeWish(kind, changes)),
    ...(startUp === undefined ? [] : [warmStart]),
    ...(hasBreaks ? [noBreaks(calendar)] : []),
  ];
  const causes = wishes.filter(({ cause }) => cause !== undefined);
  return causes.length > 1 ? [...wishes, undisturbed(causes)] : wishes;
}

/** What is lost without any of the causes is due to times that vary. */
function undisturbed(causes: readonly Wish[]): Wish {
  return {
    name: "no disturbance",
    alternatives: [causes.flatMap(({ alternatives }) => alternatives.flat())],
    cause: { name: "all", kind: "all" },
    prospect: unknown,
  };
}

function stopWishes(stop: string): readonly Wish[] {
  return [
    {
      name: `no ${stop}`,
      alternatives: [[`stops.${stop}=null`]],
      cause: { name: stop, kind: "stop" },
      prospect: { stop, share: 1 },
    },
    {
      name: `half the time of ${stop}`,
      alternatives: [[`stops.${stop}.repair=-50 %`]],
      prospect: { stop, share: 0.5 },
    },
  ];
}

const unknown = { unknown: true } as const;

function changeWish(kind: ChangeSpec["kind"], changes: readonly ChangeSpec[]): Wish {
  const own = changes.filter((change) => change.kind === kind);
  const words = `${kind} change${own.length > 1 ? "s" : ""}`;
  return {
    name: `no ${words}`,
    alternatives: [own.map(({ name }) => `changes.${name}=null`)],
    cause: { name: words, kind: "change" },
    prospect: unknown,
  };
}

const warmStart: Wish = {
  name: "warm starts",
  alternatives: [["startUp=null"]],
  cause: { name: "cold starts", kind: "start-up" },
  prospect: unknown,
};

/** Where the cell runs on, only what needs an operator waits. */
function noBreaks({ breaks }: CalendarSpec): Wish {
  return {
    name: "no breaks",
    alternatives: [["calendar.shifts.*.breaks=null"]],
    cause: { name: "breaks", kind: "break" },
    prospect: breaks === "stop" ? unknown : { isCrew: true, share: 1 },
  };
}
