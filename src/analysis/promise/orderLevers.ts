// The changes that may make an order fit its due date, each as settings of the scenario that make it.
import { outsideWindow, stationWindows } from "#analysis/window/stationWindow.ts";
import { idealCycle } from "#analysis/ideal/idealCycle.ts";
import { leversOf, type Lever, type Vary } from "#analysis/changes/levers.ts";
import type { Wish } from "#analysis/changes/wish.ts";
import { wishesFor } from "#analysis/changes/wishes.ts";
import { isFault } from "#foundation/fault.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { distributionMean } from "#engine/distributions/moments.ts";
import { secondsAPart } from "./idealFinish.ts";
import type { Order } from "./order.ts";
import { orderOf } from "./orderCampaigns.ts";
import { efforts, type Effort, type NamedSettings } from "./orderLeverEffort.ts";
import { shiftLevers } from "./orderShiftLevers.ts";

export interface OrderLever extends NamedSettings {
  readonly order: Order;
}

/** All that the reader takes, in the order of effort; a change that does not reach the cell before the due date is none. */
export function orderLevers(vary: Vary, { chance, due }: Order): readonly OrderLever[] {
  const scenario = vary([]);
  if (scenario === undefined) return [];
  const wished = leversOf(scenario, vary, wishesFor(scenario).filter(isForOrders)).filter((lever) =>
    isInWindow(lever, scenario),
  );
  const all = [
    ...laterLevers(scenario),
    ...dearestStop(wished, scenario),
    ...wished.flatMap((lever) => cellLever(lever, scenario) ?? []),
    ...shiftLevers(scenario, due),
  ];
  return all
    .toSorted((one, other) => efforts.indexOf(one.effort) - efforts.indexOf(other.effort))
    .flatMap((lever) => {
      const changed = orderOf(vary, lever.settings, { chance, replications: null });
      return isFault(changed) ? [] : [{ ...lever, order: changed }];
    });
}

const isForOrders = (wish: Wish): boolean => effortOf(wish) !== undefined;

function effortOf({ prospect, adds, cause }: Wish): Effort | undefined {
  if (cause !== undefined) return undefined;
  if (adds === 1) return "station";
  if ("isCrew" in prospect) return "operator";
  if ("stop" in prospect) return "stop";
  if ("steps" in prospect && prospect.steps.includes("mold.cool")) return "process";
  return undefined;
}

function cellLever({ wish, settings, scenario }: Lever, before: Scenario): NamedSettings | undefined {
  const effort = effortOf(wish);
  if (effort === undefined || effort === "stop") return undefined;
  const isOpen = effort === "process" && !isLimited(scenario, before);
  return { name: `${wish.name}${isOpen ? ", window not known" : ""}`, effort, settings };
}

/** Whether the process window has a physical limit for what changes. */
function isLimited(cell: Scenario, before: Scenario): boolean {
  const rowsOf = (each: Scenario): readonly string[] =>
    stationWindows(each, idealCycle(each))
      .flatMap(({ rows }) => rows)
      .filter(({ isPractice, verdict }) => !isPractice && verdict !== "no limit")
      .map(({ quantity, value, low, high }) => [quantity, value, low, high].join(" "));
  const known = rowsOf(before);
  return rowsOf(cell).some((row) => !known.includes(row));
}

/** Shorter cooling must not bring a quantity out of its limits, or further out. */
function isInWindow({ wish, scenario }: Lever, before: Scenario): boolean {
  if (effortOf(wish) !== "process") return true;
  const outside = (cell: Scenario): readonly string[] =>
    outsideWindow(stationWindows(cell, idealCycle(cell))).map(({ quantity, value }) => `${quantity} ${value}`);
  const known = outside(before);
  return outside(scenario).every((row) => known.includes(row));
}

/** Half the repair of the stop that takes most of the time. */
function dearestStop(levers: readonly Lever[], scenario: Scenario): readonly NamedSettings[] {
  const found = levers.flatMap(({ wish, settings }) =>
    "stop" in wish.prospect ? [{ stop: wish.prospect.stop, name: wish.name, settings }] : [],
  );
  const [first] = found.toSorted((one, other) => timeOf(other.stop, scenario) - timeOf(one.stop, scenario));
  return first === undefined ? [] : [{ name: first.name, effort: "stop", settings: first.settings }];
}

/** Repair time over the time between stops, as a share of the cell: a stop of one of n stations takes 1/n of it. */
function timeOf(stop: string, scenario: Scenario): number {
  const { stops = [], stations, takeaway = [] } = scenario;
  const { secondsPerShot } = idealCycle(scenario);
  const isServer = (resource: string): boolean => takeaway.some(({ name }) => name === resource);
  return stops
    .filter(({ name }) => name === stop)
    .reduce((sum, { resource, comes, repair }) => {
      const part = stations.some(({ name }) => name === resource) ? 1 / stations.length : 1;
      // A cycle of screw and valve is a shot, of a server a part, and of a station a turn of all stations.
      const cycle = isServer(resource) ? secondsAPart(scenario) : secondsPerShot / part;
      const between = comes.by === "cycles" ? comes.cycles * cycle : distributionMean(comes.between);
      return sum + (part * distributionMean(repair)) / between;
    }, 0);
}

/** What need not be ready by the due date is made after it: the last of several products, or a planned change. */
function laterLevers({ orders = [], changes = [] }: Scenario): readonly NamedSettings[] {
  const [first, last] = [orders[0], orders.at(-1)];
  const product =
    first?.product === last?.product
      ? []
      : [{ name: `${last!.product} after the due date`, settings: [`orders[${orders.length - 1}]=null`] }];
  const planned = changes.map(({ name }) => ({ name: `${name} after the order`, settings: [`changes.${name}=null`] }));
  return [...product, ...planned].map((each) => ({ ...each, effort: "later" }));
}
