// The cell of a later campaign: what its calendar, changes and random numbers are from its start on.
import { describe, expect, it } from "vitest";
import { campaignCell } from "#analysis/promise/campaignCell.ts";
import type { Campaign } from "#analysis/promise/order.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { earlyShift, oneStation } from "../../support/madeOrder.ts";

const hour = 3600;
const fixed = (value: number) => ({ kind: "fixed", value }) as const;

/** From a Monday 06:00 on, each day from 06:00 to 14:00 with a break from 10:00 to 10:30. */
const inShifts: Scenario = {
  ...oneStation,
  operators: 1,
  calendar: earlyShift,
  changes: [
    { name: "early", kind: "color", at: 2 * hour, time: fixed(60) },
    { name: "at the start", kind: "color", at: 3 * hour, time: fixed(60) },
    { name: "late", kind: "color", at: 7 * hour, time: fixed(60) },
  ],
};

const campaign = (scenario: Scenario, change: Campaign["change"] = null): Campaign => ({
  scenario,
  quantities: [{ product: null, quantity: 100 }],
  change,
});

/** In hours, without the reasons. */
const inHours = (stretches: readonly { readonly from: number; readonly until: number }[] | undefined) =>
  stretches?.map(({ from, until }) => [from / hour, until / hour]);

describe("the cell of a campaign", () => {
  // By hand: the shift ends at hour 8, the next one begins at hour 24; three hours less each.
  it("sees the calendar from its own start", () => {
    const { calendar } = campaignCell(campaign(inShifts), { index: 1, from: 3 * hour }, 24 * hour);
    expect(inHours(calendar?.off)).toEqual([[5, 21]]);
    expect(calendar?.operators.map(inHours)).toEqual([
      [
        [1, 1.5],
        [5, 21],
      ],
    ]);
    expect(inHours(calendar?.shifts[0]?.stretches)?.slice(0, 1)).toEqual([[0, 5]]);
    expect(inHours(calendar?.shifts[0]?.pauses)?.slice(0, 1)).toEqual([[1, 1.5]]);
  });

  it("has the rest of an absence under way, and none that has just ended", () => {
    const night = campaignCell(campaign(inShifts), { index: 1, from: 10 * hour }, 10 * hour).calendar;
    // From hour 8 to hour 24, of which the run of ten hours sees the part up to hour 20.
    expect(inHours(night?.off)?.[0]?.[0]).toBe(0);
    expect(inHours(night?.operators[0])?.[0]?.[0]).toBe(0);
    const rest = campaignCell(campaign(inShifts), { index: 1, from: 10.5 * hour - 6 * hour }, hour).calendar;
    expect(inHours(rest?.operators[0])).toEqual([]);
    expect(inHours(rest?.shifts[0]?.pauses)).toEqual([]);
  });

  it("sees the calendar as it is where it is the first, over the length of the run", () => {
    const { calendar } = campaignCell(campaign(inShifts), { index: 0, from: 0 }, 48 * hour);
    expect(inHours(calendar?.off)).toEqual([
      [8, 24],
      [32, 48],
    ]);
  });

  it("has its set-up at the start, then the planned changes that are still ahead", () => {
    const setUp = { name: "to blue", kind: "color", time: fixed(600) } as const;
    const later = campaignCell(campaign(inShifts, setUp), { index: 1, from: 3 * hour }, 24 * hour);
    expect(later.changes?.map(({ name, at }) => [name, at / hour])).toEqual([
      ["to blue", 0],
      ["at the start", 0],
      ["late", 4],
    ]);
    const last = campaignCell(campaign(inShifts), { index: 1, from: 8 * hour }, 24 * hour);
    expect("changes" in last).toBe(false);
  });

  it("has no warm-up, and after the first campaign runs already with random numbers of its own", () => {
    const scenario = {
      ...oneStation,
      run: { ...oneStation.run, warmup: 600, start: "cold", seed: "s" },
    } as const;
    const first = campaignCell(campaign(scenario), { index: 0, from: 0 }, 1000);
    expect(first.run).toEqual({ ...scenario.run, warmup: 0, length: 1000 });
    const third = campaignCell(campaign(scenario), { index: 2, from: 500 }, 1000);
    expect(third.run).toEqual({
      ...scenario.run,
      warmup: 0,
      length: 1000,
      start: "running",
      seed: "s, campaign 3",
    });
    expect("calendar" in third).toBe(false);
  });

  it("is another one at each start, whatever the length", () => {
    const one = campaign(inShifts);
    const offOf = (from: number) => inHours(campaignCell(one, { index: 1, from }, 24 * hour).calendar?.off)?.[0];
    expect([3, 4].map((start) => offOf(start * hour))).toEqual([
      [5, 21],
      [4, 20],
    ]);
    const alone = campaignCell(
      campaign({ ...inShifts, changes: inShifts.changes!.slice(0, 1) }),
      { index: 0, from: 0 },
      hour,
    );
    expect(alone.changes?.map(({ name }) => name)).toEqual(["early"]);
  });

  it("is one object for all runs of the first campaign of one length, so that its plan is compiled once", () => {
    const one = campaign(oneStation);
    const at = (length: number) => campaignCell(one, { index: 0, from: 0 }, length);
    const [short, long] = [at(1000), at(2000)];
    expect(at(1000)).toBe(short);
    expect(at(2000)).toBe(long);
    expect([short.run.length, long.run.length]).toEqual([1000, 2000]);
  });
});
