// From written orders to quantities of known products with due dates in seconds of the run.
import type { WallClock } from "#engine/calendar.ts";
import { didYouMean } from "#foundation/didYouMean.ts";
import type { OrderSpec } from "#scenario/scenario.ts";
import type { Finding, Path } from "#scenario/values/finding.ts";
import { dueSeconds, type DueText } from "./dueText.ts";

/** As far as it could be read. */
export interface OrderDraft {
  readonly quantity?: number | undefined;
  readonly product?: string | undefined;
  /** A `DueText`: read as a whole or not at all. */
  readonly due?: object | undefined;
}

interface Around {
  /** Names of the products of the cell. */
  readonly products: readonly string[];
  /** The wall clock of the calendar; undefined where there is none. */
  readonly clock: WallClock | undefined;
  readonly report: (finding: Finding) => void;
}

/** Undefined where one of them is refused. */
export function orderSpecs(
  drafts: readonly (OrderDraft | undefined)[] | undefined,
  around: Around,
): { readonly orders?: readonly OrderSpec[] } | undefined {
  if (drafts === undefined) return {};
  const orders = drafts.map((draft, i) => draft && orderOf(draft, ["orders", i], around));
  const read = orders.filter((order) => order !== undefined);
  checkOneDate(read, around);
  return read.length === orders.length ? { orders: read } : undefined;
}

function orderOf({ quantity, product: named, due }: OrderDraft, path: Path, around: Around): OrderSpec | undefined {
  const product = productOf(named, path, around);
  const seconds = due && secondsOf(due as DueText, path, around);
  if (quantity === undefined || product === undefined || (due !== undefined && seconds === undefined)) return undefined;
  return { product, quantity, ...(seconds === undefined ? {} : { due: seconds }) };
}

/** The orders of a call are promised together, so that they have one due date. */
function checkOneDate(orders: readonly OrderSpec[], { report }: Around): void {
  const different = orders.findIndex(({ due }) => due !== orders[0]!.due);
  if (different === -1) return;
  report({
    code: "due-differs",
    message: "The orders have different due dates; they are promised together.",
    expected: "one due date for all orders",
    remedy: "Give all orders the due date of the last, or promise each by itself.",
    path: ["orders", different, "due"],
  });
}

function productOf(named: string | undefined, path: Path, { products, report }: Around): string | undefined {
  const [only = "product"] = products;
  if (named === undefined && products.length < 2) return only;
  if (named !== undefined && products.includes(named)) return named;
  const known = products.map((name) => `\`${name}\``).join(", ");
  const meant = named === undefined ? undefined : didYouMean(named, products);
  const expected = products.length === 0 ? "no `product`" : `one of ${known}`;
  const written = products.length === 0 ? "Delete the key, or add `products`." : `Write ${expected}.`;
  const message = named === undefined ? "The cell has several products." : `The cell has no product "${named}".`;
  const remedy = meant === undefined ? written : `Did you mean \`${meant}\`?`;
  report({ code: "order-product", message, expected, remedy, path: [...path, "product"] });
  return undefined;
}

function secondsOf(due: DueText, path: Path, { clock, report }: Around): number | undefined {
  const at = [...path, "due"];
  const seconds = dueSeconds(due, clock);
  if (seconds !== undefined && seconds > 0) return seconds;
  const expected = "a due date after the start of the run";
  if (seconds === undefined) {
    const remedy = 'Add `calendar`, or call with `--shifts "2 x 8 h, mon-fri" --start "2026-11-30 06:00"`.';
    report({ code: "due-calendar", message: "A due date needs a calendar.", expected, remedy, path: at });
  } else {
    const remedy = "Give a later due date, or let the run begin earlier (`calendar.from`, or `--start`).";
    report({
      code: "due-past",
      message: "The due date is not after the start of the run.",
      expected,
      remedy,
      path: at,
    });
  }
  return undefined;
}
