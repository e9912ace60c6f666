// The options that give an order, its due date and the work shifts.
import type { Issue } from "#foundation/issue.ts";
import { readOrderCall, type OrderSetting } from "#scenario/order/orderCall.ts";
import type { OptionSpec, Options } from "./command.ts";

export const shiftsOption: OptionSpec = {
  flags: "--shifts <pattern>",
  meaning: 'work shifts in place of the calendar of the file: "2 x 8 h, mon-fri", "24 h, every day"; needs --start',
};
export const startOption: OptionSpec = {
  flags: "--start <date>",
  meaning: 'local date and time at which the run begins, such as "2026-11-30 06:00"',
};
export const orderOption: OptionSpec = {
  flags: "--order <quantity>",
  meaning:
    'good parts to make, such as "200000 parts"; "50000 parts of PRODUCT" where there are several; repeatable, made in this order',
  repeatable: true,
};
export const dueOption: OptionSpec = {
  flags: "--due <date>",
  meaning: 'when the order must be made: "2026-12-04 14:00", "Friday 14:00" (the first after the start), or "5 d"',
};

export const leversOption: OptionSpec = {
  flags: "--levers",
  meaning: "also run the changes that may make the order fit where it fits already",
};

/** Without those that cannot be read; `orderIssues` reports them. */
export function orderSettings(options: Options): readonly OrderSetting[] {
  return readOrderCall(options).settings;
}

/** As the results name them: `shifts=2 x 8 h, mon-fri`. */
export function orderTexts({ shifts, start, order = [], due }: Options): readonly string[] {
  const texts = Object.entries({ shifts, start, order: order.length === 0 ? undefined : order.join(", "), due });
  return texts.flatMap(([name, text]) => (text === undefined ? [] : [`${name}=${text}`]));
}

export function orderIssues(options: Options): readonly Issue[] {
  return readOrderCall(options).issues;
}
