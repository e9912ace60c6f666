// What the form of an order shows: the values of the scenario, and in their place those that were typed.
import { wallAt, wallClockOf } from "#scenario/resolving/wallTime.ts";
import { dateOf } from "#foundation/civilDate.ts";
import { usualChance } from "#scenario/order/chanceText.ts";
import type { OrderCall } from "#scenario/order/orderCall.ts";
import type { Scenario } from "#scenario/scenario.ts";

export interface OrderLine {
  /** As it is typed, such as `200000`. */
  readonly quantity: string;
  /** Empty where the cell makes one product. */
  readonly product: string;
}

export interface OrderForm {
  readonly lines: readonly OrderLine[];
  readonly due: string;
  readonly start: string;
  /** Empty: as the scenario has them. */
  readonly shifts: string;
  readonly chance: string;
}

/** Only what was typed. */
export type TypedForm = Partial<OrderForm>;

/** The names of the products that the scenario uses; none where there is one only. */
export function productsOf({ stations, orders = [], changeovers = [] }: Scenario): readonly string[] {
  const names = [...stations, ...orders].map(({ product }) => product);
  const all = new Set([...names, ...changeovers.map(({ to }) => to)]);
  return all.size > 1 ? [...all] : [];
}

export function formOf(scenario: Scenario): OrderForm {
  const { orders = [], calendar } = scenario;
  const products = productsOf(scenario);
  const named = (product: string): string => (products.length === 0 ? "" : product);
  const lines = orders.map(({ quantity, product }) => ({ quantity: String(quantity), product: named(product) }));
  const due = orders.at(-1)?.due;
  return {
    lines: lines.length > 0 ? lines : [{ quantity: "", product: products[0] ?? "" }],
    due: due === undefined ? "" : dueText(due, scenario),
    start: calendar?.begins ?? "",
    shifts: "",
    chance: usualChance,
  };
}

const secondsOfDay = 86_400;
const secondsOfHour = 3600;
const secondsOfMinute = 60;

/** As `--due` takes it. */
function dueText(due: number, { calendar }: Scenario): string {
  if (calendar) {
    const wall = wallAt(due, wallClockOf(calendar));
    const day = Math.floor(wall / secondsOfDay);
    const minute = Math.floor((wall - day * secondsOfDay) / secondsOfMinute);
    return `${dateOf(day)} ${[Math.floor(minute / 60), minute % 60].map((part) => String(part).padStart(2, "0")).join(":")}`;
  }
  if (due % secondsOfDay === 0) return `${due / secondsOfDay} d`;
  return due % secondsOfHour === 0 ? `${due / secondsOfHour} h` : `${due} s`;
}

/** Only what differs from the scenario is in the call. A due date belongs to the orders, and it may count from the start. */
export function callOf(own: OrderForm, typed: TypedForm): OrderCall & { readonly chance: string } {
  const form = { ...own, ...typed };
  const due = form.due.trim();
  const lines = form.lines.filter(({ quantity }) => quantity.trim() !== "");
  const isOrdered = typed.lines !== undefined || (typed.due !== undefined && due === "");
  const begins = typed.start !== undefined || typed.shifts !== undefined;
  const isDue = due !== "" && lines.length > 0 && (isOrdered || begins || typed.due !== undefined);
  const [start, shifts] = [form.start.trim(), form.shifts.trim()];
  return {
    ...(shifts === "" ? {} : { shifts }),
    ...(begins && start !== "" ? { start } : {}),
    ...(isOrdered && lines.length > 0 ? { order: lines.map(lineText) } : {}),
    ...(isDue ? { due } : {}),
    chance: form.chance.trim(),
  };
}

function lineText({ quantity, product }: OrderLine): string {
  const parts = /^\d+$/u.test(quantity.trim()) ? `${quantity.trim()} parts` : quantity.trim();
  return product.trim() === "" ? parts : `${parts} of ${product.trim()}`;
}
