// From shifts in wall time to stretches of the run; start-up and planned changes, with the checks that look across keys.
import {
  between,
  holds,
  meeting,
  occurrences,
  secondsAtWall,
  united,
  type Pattern,
  type Stretch,
  type WallClock,
} from "#engine/calendar.ts";
import { didYouMean } from "#foundation/didYouMean.ts";
import type { Path } from "#scenario/values/finding.ts";
import { settled, type Resolution } from "./resolution.ts";
import type {
  AbsenceSpec,
  CalendarSpec,
  ChangeoverSpec,
  ChangeSpec,
  Scenario,
  ShiftSpec,
  StartUpSpec,
} from "#scenario/scenario.ts";
import type { ListedStation } from "./stationList.ts";
import { secondsOfDay, wallClockOf, wallOf, type WallTimes } from "./wallTime.ts";

type Planned = Pick<Scenario, "calendar" | "startUp" | "changes" | "changeovers">;
type CalendarDraft = NonNullable<Resolution["draft"]["calendar"]>;
type ShiftDraft = NonNullable<CalendarDraft["shifts"]>[number];
type ChangeDraft = NonNullable<NonNullable<Resolution["draft"]["changes"]>[number]>;

const milligramsPerKilogram = 1_000_000;

/** Undefined where a part of it could not be read. */
export function resolveCalendar(listed: readonly ListedStation[], resolution: Resolution): Planned | undefined {
  const { draft } = resolution;
  const length = draft.run?.length;
  if (length === undefined) return undefined;
  const times = wallTimesOf(draft.calendar);
  const clock = times && wallClockOf(times);
  const calendar =
    draft.calendar && times && calendarOf(draft.calendar, times, { length, operators: draft.crew?.operators ?? 0 });
  if (draft.calendar !== undefined && calendar === undefined) return undefined;
  checkShifts(calendar, length, resolution);
  const written = draft.changes ?? [];
  const around = { clock, listed, resolution };
  const changes = written.map((each, i) => (each?.to === undefined ? changeOf(each, ["changes", i], around) : null));
  const overs = written.map((each, i) => (each?.to === undefined ? null : changeoverOf(each, ["changes", i], around)));
  if (changes.includes(undefined) || overs.includes(undefined)) return undefined;
  const [atDates, beforeOrders] = [changes.filter(isGiven), overs.filter(isGiven)];
  const startUp = startUpOf(draft.startUp);
  return {
    ...(calendar ? { calendar } : {}),
    ...(startUp ? { startUp } : {}),
    ...(atDates.length > 0 ? { changes: atDates } : {}),
    ...(beforeOrders.length > 0 ? { changeovers: beforeOrders } : {}),
  };
}

/** Seconds of one replication; undefined where they cannot be settled. */
export function lengthOfRun({ draft, has, report }: Resolution): number | undefined {
  const { length, until } = draft.run ?? {};
  if (until === undefined) return length;
  const times = wallTimesOf(draft.calendar);
  if (draft.calendar !== undefined && times === undefined) return undefined;
  const [date = "", time = ""] = until.split(" ");
  const ends = times && secondsAtWall(wallOf(date, time), wallClockOf(times));
  const isTwice = has(["run", "length"]);
  if (ends !== undefined && ends > 0 && !isTwice) return ends;
  const message = isTwice
    ? "The length of the run is given twice."
    : times
      ? `The run begins at ${times.begins}, not before its end.`
      : "A date needs a calendar.";
  report({
    code: "run-until",
    message,
    expected: "`until` after the start of the calendar, or `length`",
    remedy: isTwice ? "Remove one of them, such as `--set run.length=null`." : "Give a later date, or `run.length`.",
    path: ["run", "until"],
  });
  return undefined;
}

/** Undefined without a calendar that can be read. */
export function clockOf({ calendar }: Resolution["draft"]): WallClock | undefined {
  const times = wallTimesOf(calendar);
  return times && wallClockOf(times);
}

function wallTimesOf(calendar: CalendarDraft | undefined): WallTimes | undefined {
  if (calendar?.from === undefined || calendar.at === undefined) return undefined;
  const clockChanges = (calendar.clockChanges ?? []).flatMap((change) =>
    change?.on === undefined || change.at === undefined || change.by === undefined
      ? []
      : [{ on: change.on, at: change.at, by: change.by === "1 h" ? 3600 : -3600 }],
  );
  return { begins: `${calendar.from} ${calendar.at}`, clockChanges };
}

interface Extent {
  readonly length: number;
  readonly operators: number;
}

function calendarOf(
  draft: Pick<CalendarDraft, "shifts" | "breaks">,
  { begins, clockChanges }: WallTimes,
  { length, operators }: Extent,
): CalendarSpec | undefined {
  const times = { begins, clockChanges };
  const clock = wallClockOf(times);
  const shifts = draft.shifts ?? [];
  if (shifts.some((shift) => patternOf(shift) === undefined)) return undefined;
  const on = (those: readonly ShiftDraft[]): readonly Stretch[] =>
    united(those.flatMap((shift) => occurrences(patternOf(shift)!, clock, length)));
  const named = (stretches: readonly Stretch[], why: AbsenceSpec["why"]): readonly AbsenceSpec[] =>
    stretches.map((stretch) => ({ ...stretch, why }));
  const pauses = united(shifts.flatMap((shift) => breaksOf(shift, clock, length)));
  const off = named(between(on(shifts), length), "off shift");
  const away = Array.from({ length: operators }, (_, i) => {
    const own = shifts.filter((shift) => i < (shift?.operators ?? operators));
    const breaks = united(own.flatMap((shift) => breaksOf(shift, clock, length)));
    return apart(named(between(on(own), length), "off shift"), named(breaks, "on break"));
  });
  return {
    ...times,
    off: draft.breaks === "stop" ? apart(off, named(pauses, "on break")) : off,
    operators: away,
    shifts: shifts.flatMap((shift) => shiftOf(shift, clock, length)),
    breaks: draft.breaks ?? "run on",
  };
}

/** The same work shifts over another length of the run, in seconds. */
export function calendarOver(calendar: CalendarSpec, operators: number, length: number): CalendarSpec {
  return calendarOf(calendar, calendar, { length, operators }) ?? calendar;
}

/** As it was written, and when it is in the run. */
function shiftOf(draft: ShiftDraft, clock: WallClock, length: number): readonly ShiftSpec[] {
  const pattern = patternOf(draft);
  if (!draft || !pattern) return [];
  const { name, start, end, operators } = draft;
  const breaks = (draft.breaks ?? []).flatMap((rest) =>
    rest?.at === undefined || rest.time === undefined ? [] : [{ at: rest.at, time: rest.time }],
  );
  return [
    {
      ...(name === undefined ? {} : { name }),
      ...(pattern.days ? { days: pattern.days } : {}),
      start: start!,
      end: end!,
      ...(operators === undefined ? {} : { operators }),
      breaks,
      stretches: occurrences(pattern, clock, length),
      pauses: united(breaksOf(draft, clock, length)),
    },
  ];
}

/** Both in the order of time; only the part of a break within a work shift. */
function apart(off: readonly AbsenceSpec[], breaks: readonly AbsenceSpec[]): readonly AbsenceSpec[] {
  const outside = breaks.filter((each) => meeting(off, each).length === 0);
  return [...off, ...outside].toSorted((one, other) => one.from - other.from);
}

function patternOf(shift: ShiftDraft): Pattern | undefined {
  if (shift?.start === undefined || shift.end === undefined) return undefined;
  const days = shift.days?.filter((day) => day !== undefined);
  return { start: secondsOfDay(shift.start), end: secondsOfDay(shift.end), ...(days ? { days } : {}) };
}

/** A break belongs to its shift: before the shift's start it is on the next day. */
function breaksOf(shift: ShiftDraft, clock: WallClock, length: number): readonly Stretch[] {
  const pattern = patternOf(shift);
  if (pattern === undefined) return [];
  const stretches = occurrences(pattern, clock, length);
  return (shift?.breaks ?? []).flatMap((rest) => {
    if (rest?.at === undefined || rest.time === undefined) return [];
    if (rest.time <= 0) return [];
    const at = secondsOfDay(rest.at);
    const { days: _, ...daily } = pattern;
    const all = occurrences({ ...daily, start: at, end: (at + rest.time) % 86_400 }, clock, length);
    return all.filter(({ from }) => holds(stretches, from));
  });
}

/** A run without a work shift has no result. */
function checkShifts(calendar: CalendarSpec | undefined, length: number, { report }: Resolution): void {
  const rest = calendar?.off.reduce((sum, { from, until }) => sum + until - from, 0) ?? 0;
  if (rest < length) return;
  report({
    code: "never-on-shift",
    message: "No shift falls into the run.",
    expected: "a `run.length` that reaches into a shift",
    remedy: "Make the run longer, or let it begin at another date or time.",
    path: ["calendar"],
    at: "key",
  });
}

function startUpOf(draft: Resolution["draft"]["startUp"]): StartUpSpec | undefined {
  if (draft?.afterOff === undefined) return undefined;
  const { afterOff, heatUp = 0, purge = 0, scrap = 0 } = draft;
  return { afterOff, heatUp, purge: purge / milligramsPerKilogram, scrap: Math.round(scrap) };
}

interface Around {
  readonly clock: WallClock | undefined;
  readonly listed: readonly ListedStation[];
  readonly resolution: Resolution;
}

function changeOf(draft: ChangeDraft | undefined, path: Path, around: Around): ChangeSpec | undefined {
  if (draft === undefined) return undefined;
  const at = momentOf(draft, path, around);
  checkStation(draft, path, around);
  const purge = purgeOf(draft, path, around.resolution);
  const { name, kind, station } = draft;
  const time = settled(draft.time);
  if (name === undefined || kind === undefined || time === undefined || at === undefined) return undefined;
  return { name, kind, at, time, ...(station === undefined ? {} : { station }), ...(purge ? { purge } : {}) };
}

const isGiven = <Each>(each: Each | null | undefined): each is Each => each !== null && each !== undefined;

/** Before an order: of the whole cell, at the moment when the order before it is made. */
function changeoverOf(draft: ChangeDraft, path: Path, { resolution }: Around): ChangeoverSpec | undefined {
  const { name, kind, to, on, after, station } = draft;
  const purge = purgeOf(draft, path, resolution);
  const time = settled(draft.time);
  const products = Object.keys(resolution.draft.products ?? {});
  const isKnown = to !== undefined && products.includes(to);
  if (!isKnown || on !== undefined || after !== undefined || station !== undefined) {
    const known = products.map((each) => `\`${each}\``).join(", ");
    resolution.report({
      code: "change-to",
      message: isKnown ? "A change before an order has no date and no station." : `There is no product "${to}".`,
      expected: isKnown ? "`to` alone" : products.length === 0 ? "several `products`" : `one of ${known}`,
      remedy: isKnown ? "Delete `on`, `after` and `station`." : "Name a product of `products`.",
      path: [...path, "to"],
    });
    return undefined;
  }
  if (name === undefined || kind === undefined || time === undefined) return undefined;
  return { name, kind, to, time, ...(purge ? { purge } : {}) };
}

function momentOf(
  { on, at, after }: ChangeDraft,
  path: Path,
  { clock, resolution: { has, report } }: Around,
): number | undefined {
  if (after !== undefined && on === undefined) return after;
  if (on !== undefined && at !== undefined && after === undefined && clock) return secondsAtWall(wallOf(on, at), clock);
  if (has([...path, "on"]) || has([...path, "at"]) || !has([...path, "after"])) {
    report({
      code: "change-when",
      message: clock ? "It is not said once when the change comes." : "A date needs a calendar.",
      expected: "`on: 2026-03-25` with `at: 10:00`, or `after: 36 h`",
      remedy: clock ? "Give `on` and `at`, or `after`, not both." : "Add a `calendar`, or write `after: 36 h`.",
      path: [...path, "after"],
    });
  }
  return undefined;
}

function checkStation({ kind, station }: ChangeDraft, path: Path, { listed, resolution: { report } }: Around): void {
  const names = listed.map(({ name }) => name);
  if (kind === "mold" ? station !== undefined && names.includes(station) : station === undefined) return;
  const meant = station === undefined ? undefined : didYouMean(station, names);
  report({
    code: "change-station",
    message: kind === "mold" ? "It is not said whose mold is changed." : `A change of ${kind} concerns the whole cell.`,
    expected: kind === "mold" ? `one of ${names.map((name) => `\`${name}\``).join(", ")}` : "no `station`",
    remedy:
      meant === undefined
        ? kind === "mold"
          ? `Write \`station: ${names[0]}\`.`
          : "Delete the key."
        : `Did you mean \`${meant}\`?`,
    path: [...path, "station"],
  });
}

/** Without a residue the change takes only the time of the work. */
function purgeOf({ kind, residue }: ChangeDraft, path: Path, { draft, report }: Resolution): ChangeSpec["purge"] {
  if (residue === undefined) return undefined;
  const { holdUp, manifoldHoldUp } = draft.delivery ?? {};
  if (kind !== "mold" && holdUp !== undefined && manifoldHoldUp !== undefined) {
    return { residue, screw: holdUp / milligramsPerKilogram, manifold: manifoldHoldUp / milligramsPerKilogram };
  }
  report({
    code: "change-purge",
    message: kind === "mold" ? "Nothing is purged for another mold." : "How much melt must be driven out is not known.",
    expected: kind === "mold" ? "no `residue`" : "`delivery.holdUp` and `delivery.manifoldHoldUp`",
    remedy: kind === "mold" ? "Delete the key." : "Add both, such as `holdUp: 2.5 kg` and `manifoldHoldUp: 0.4 kg`.",
    path: [...path, "residue"],
  });
  return undefined;
}
