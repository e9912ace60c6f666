// What a call gives of an order, its due date and the work shifts, as settings of the scenario.
import { isFault, type Fault } from "#foundation/fault.ts";
import type { Issue } from "#foundation/issue.ts";
import { parseDue } from "./dueText.ts";
import { parseOrder } from "./orderText.ts";
import { calendarText, parseShifts, startOfDay } from "./shiftsText.ts";
import { parseStart, startForm } from "./startText.ts";

/** The texts of the options of these names; absent: as the scenario has it. */
export interface OrderCall {
  readonly shifts?: string;
  readonly start?: string;
  readonly order?: readonly string[];
  readonly due?: string;
}

/** What one option means, as `path=value` for the reader of the scenario. */
export interface OrderSetting {
  readonly option: string;
  /** As it was written. */
  readonly text: string;
  readonly setting: string;
}

export interface ReadOrderCall {
  /** Without those that cannot be read. */
  readonly settings: readonly OrderSetting[];
  readonly issues: readonly Issue[];
}

export function readOrderCall(call: OrderCall): ReadOrderCall {
  const [calendar, ordered, due] = [calendarOf(call), ordersOf(call), dueOf(call)];
  // Without the orders the due date would have no place.
  const parts = ordered.issues.length > 0 ? [calendar, ordered, { ...due, settings: [] }] : [calendar, ordered, due];
  return { settings: parts.flatMap(({ settings }) => settings), issues: parts.flatMap(({ issues }) => issues) };
}

/** An issue of a reading that had these settings first, at the option that it comes from; undefined: it comes from elsewhere. */
export function issueOfOrder({ place, ...issue }: Issue, settings: readonly OrderSetting[]): Issue | undefined {
  const number = /^--set (\d+)$/.exec(place?.file ?? "")?.[1];
  const found = settings[Number(number ?? 0) - 1];
  return found && { ...issue, value: found.text, option: found.option };
}

const nothing: ReadOrderCall = { settings: [], issues: [] };

function calendarOf({ shifts, start }: OrderCall): ReadOrderCall {
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
function ordersOf({ order = [] }: OrderCall): ReadOrderCall {
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
function dueOf({ due }: OrderCall): ReadOrderCall {
  if (due === undefined) return nothing;
  const read = parseDue(due);
  if (isFault(read)) return wrong("--due", due, read);
  return { settings: [{ option: "--due", text: due, setting: `orders.*.due=${JSON.stringify(due)}` }], issues: [] };
}

function wrong(option: string, value: string, fault: Fault): ReadOrderCall {
  return { settings: [], issues: [{ ...fault, severity: "error", fate: "file", option, path: "", value }] };
}
