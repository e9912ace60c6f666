// The cell of a campaign that begins at a later time: its calendar and its changes seen from there, over the length of a run.
import type { CalendarSpec, Scenario } from "#scenario/scenario.ts";
import { calendarOver } from "#scenario/resolving/resolveCalendar.ts";
import type { Campaign } from "./order.ts";

interface Start {
  /** Counted from 0. */
  readonly index: number;
  /** Seconds from the start of the order. */
  readonly from: number;
}

/** Each length of the first campaign, so that its plan is compiled once for all replications. */
const firstCells = new WeakMap<Campaign, Map<number, Scenario>>();

/** Terminating runs have no warm-up. Each campaign has random numbers of its own. */
export function campaignCell(campaign: Campaign, { index, from }: Start, length: number): Scenario {
  if (from > 0) return cellFrom(campaign, { index, from }, length);
  const known = firstCells.get(campaign) ?? new Map<number, Scenario>();
  firstCells.set(campaign, known);
  const cell = known.get(length) ?? cellFrom(campaign, { index, from }, length);
  known.set(length, cell);
  return cell;
}

function cellFrom({ scenario, change }: Campaign, { index, from }: Start, length: number): Scenario {
  const { calendar, operators, changes = [], run } = scenario;
  const ahead = changes.filter(({ at }) => at >= from).map((planned) => ({ ...planned, at: planned.at - from }));
  const all = change ? [{ ...change, at: 0 }, ...ahead] : ahead;
  const { changes: _, ...rest } = scenario;
  return {
    ...rest,
    ...(all.length > 0 ? { changes: all } : {}),
    ...(calendar ? { calendar: seenFrom(calendarOver(calendar, operators, from + length), from) } : {}),
    run: {
      ...run,
      length,
      warmup: 0,
      ...(index === 0 ? {} : { start: "running", seed: `${run.seed}, campaign ${index + 1}` }),
    },
  };
}

/** Of an absence under way only the rest is left. */
function seenFrom(calendar: CalendarSpec, from: number): CalendarSpec {
  const later = <Stretch extends { readonly from: number; readonly until: number }>(all: readonly Stretch[]) =>
    all
      .filter(({ until }) => until > from)
      .map((each): Stretch => ({ ...each, from: Math.max(0, each.from - from), until: each.until - from }));
  return {
    ...calendar,
    off: later(calendar.off),
    operators: calendar.operators.map(later),
    shifts: calendar.shifts.map((shift) => ({
      ...shift,
      stretches: later(shift.stretches),
      pauses: later(shift.pauses),
    })),
  };
}
