// The options that give an order, its due date and the work shifts, as settings of the scenario.
import { isFault, type Fault } from "#foundation/fault.ts";
import type { Issue, IssueMeaning } from "#foundation/issue.ts";
import { parseDue } from "#scenario/order/dueText.ts";
import { parseOrder } from "#scenario/order/orderText.ts";
import { calendarText, parseShifts, startOfDay } from "#scenario/order/shiftsText.ts";
import { parseStart, startForm } from "#scenario/order/startText.ts";
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

export const orderIssueCodes = {
  "start-missing": ["work shifts are given without the date at which the run begins", "Add `--start`."],
} as const satisfies Readonly<Record<string, IssueMeaning>>;

/** What one option means, as `path=value` for the reader of the scenario. */
export interface OrderSetting {
  readonly option: string;
  /** As it was written. */
  readonly text: string;
  readonly setting: string;
}

/** Without those that cannot be read; `orderIssues` reports them. */
export function orderSettings(options: Options): readonly OrderSetting[] {
  return readOptions(options).settings;
}

/** As the results name them: `shifts=2 x 8 h, mon-fri`. */
export function orderTexts({ shifts, start, order = [], due }: Options): readonly string[] {
  const texts = Object.entries({ shifts, start, order: order.length === 0 ? undefined : order.join(", "), due });
  return texts.flatMap(([name, text]) => (text === undefined ? [] : [`${name}=${text}`]));
}

export function orderIssues(options: Options): readonly Issue[] {
  return readOptions(options).issues;
}

interface ReadOptions {
  readonly settings: readonly OrderSetting[];
  readonly issues: readonly Issue[];
}

function readOptions(options: Options): ReadOptions {
  const parts = [calendarOf(options), ordersOf(options), dueOf(options)];
  return { settings: parts.flatMap(({ settings }) => settings), issues: parts.flatMap(({ issues }) => issues) };
}

const nothing: ReadOptions = { settings: [], issues: [] };

function calendarOf({ shifts, start }: Options): ReadOptions {
  const begins = start === undefined ? undefined : parseStart(start);
  const pattern = shifts === undefined ? undefined : parseShifts(shifts);
  if (begins !== undefined && isFault(begins)) return wrong("--start", start!, begins);
  if (pattern !== undefined && isFault(pattern)) return wrong("--shifts", shifts!, pattern);
  if (pattern !== undefined && begins === undefined) return wrong("--shifts", shifts!, missingStart);
  if (begins === undefined) return nothing;
  if (pattern !== undefined) {
    const setting = `calendar=${calendarText(pattern, begins.date, begins.time ?? startOfDay(pattern))}`;
    return { settings: [{ option: "--shifts", text: shifts!, setting }], issues: [] };
  }
  const { date, time } = begins;
  const settings = [`calendar.from=${date}`, ...(time === undefined ? [] : [`calendar.at="${time}"`])];
  return { settings: settings.map((setting) => ({ option: "--start", text: start!, setting })), issues: [] };
}

const missingStart: Fault = {
  code: "start-missing",
  message: "It does not say at which date the run begins.",
  expected: `a start such as ${startForm}`,
  remedy: 'Add the start: `--start "2026-11-30 06:00"`.',
};

/** All orders are one setting: they take the place of those of the file. */
function ordersOf({ order = [] }: Options): ReadOptions {
  if (order.length === 0) return nothing;
  const read = order.map((text) => ({ text, value: parseOrder(text) }));
  const issues = read.flatMap(({ text, value }) => (isFault(value) ? wrong("--order", text, value).issues : []));
  if (issues.length > 0) return { settings: [], issues };
  const entries = read.map(({ value }) => (isFault(value) ? "" : entryText(value)));
  return {
    settings: [{ option: "--order", text: order.join(", "), setting: `orders=[${entries.join(", ")}]` }],
    issues,
  };
}

function entryText({ quantity, product }: { readonly quantity: number; readonly product?: string }): string {
  return `{ quantity: ${quantity} parts${product === undefined ? "" : `, product: ${JSON.stringify(product)}`} }`;
}

/** Everything that is ordered must be made by then. */
function dueOf({ due }: Options): ReadOptions {
  if (due === undefined) return nothing;
  const read = parseDue(due);
  if (isFault(read)) return wrong("--due", due, read);
  return { settings: [{ option: "--due", text: due, setting: `orders.*.due=${JSON.stringify(due)}` }], issues: [] };
}

function wrong(option: string, value: string, fault: Fault): ReadOptions {
  return { settings: [], issues: [{ ...fault, severity: "error", fate: "file", option, path: "", value }] };
}
