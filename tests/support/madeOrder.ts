// Orders and answers of their runs, written down without a run.
import type { Order } from "#analysis/promise/order.ts";
import type { CampaignAnswer, OrderAnswer } from "#analysis/promise/orderAnswer.ts";
import type { CalendarSpec, Scenario } from "#scenario/scenario.ts";
import { fixedCell } from "./fixedCell.ts";

/** One station of two cavities, 13 s a shot. */
export const oneStation: Scenario = fixedCell({
  stations: [{ recharge: 4, drop: 2, close: 1, cool: 8.5, remove: 1 }],
  shift: 0.5,
});

/** From a Monday 06:00 on, each day from 06:00 to 14:00 with a break from 10:00 to 10:30, on which the cell runs on. */
export const earlyShift: CalendarSpec = {
  begins: "2026-11-30 06:00",
  clockChanges: [],
  off: [],
  operators: [],
  shifts: [{ start: "06:00", end: "14:00", breaks: [{ at: "10:00", time: 1800 }], stretches: [], pauses: [] }],
  breaks: "run on",
};

export function orderFor(scenario: Scenario, quantity: number, more: Partial<Order> = {}): Order {
  const campaigns = [{ scenario, quantities: [{ product: null, quantity }], change: null }];
  return {
    name: `${quantity} parts`,
    campaigns,
    due: null,
    chance: 0.95,
    replications: null,
    ...more,
  };
}

export function campaignMade(seconds: number, more: Partial<CampaignAnswer> = {}): CampaignAnswer {
  return {
    seconds,
    measures: [],
    elementTimes: [],
    resin: null,
    operatorSeconds: { onShift: 0, worked: 0 },
    finished: [seconds],
    ...more,
  };
}

/** A run of one campaign that is done after so many seconds; null: not done. */
export function runMade(finish: number | null, replication: number, more: Partial<OrderAnswer> = {}): OrderAnswer {
  const campaigns = finish === null ? [] : [campaignMade(finish)];
  return {
    task: { replication },
    campaigns,
    finish,
    goodAtDue: null,
    made: null,
    standstill: null,
    ...more,
  };
}

/** So many runs, of which the first are on time: done after 100 s, the others after 300 s. */
export function runsMade(count: number, onTime = count): readonly OrderAnswer[] {
  return Array.from({ length: count }, (_, i) => runMade(i < onTime ? 100 : 300, i + 1));
}
