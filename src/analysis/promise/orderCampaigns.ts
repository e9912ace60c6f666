// From the orders of a scenario to what the cell makes one after the other: a campaign for each set-up of the stations.
import type { Vary } from "#analysis/changes/levers.ts";
import type { Issue, IssueMeaning } from "#foundation/issue.ts";
import type { OrderSpec, Scenario } from "#scenario/scenario.ts";
import type { Campaign, Order } from "./order.ts";

export const campaignIssueCodes = {
  "order-missing": ["nothing is ordered", "Add `orders` to the scenario, or `--order` to the call."],
  "order-setup": [
    "the stations cannot be set up for an ordered product",
    "Check the product, with `check FILE --set stations.*.product=PRODUCT`.",
  ],
} as const satisfies Readonly<Record<string, IssueMeaning>>;

/** What the call wants to know of an order. */
export type OrderWish = Pick<Order, "chance" | "replications">;

/** The order of the scenario that `vary` reads with these settings. */
export function orderOf(vary: Vary, settings: readonly string[], wish: OrderWish): Order | Issue {
  const scenario = vary(settings);
  const orders = scenario?.orders ?? [];
  if (scenario === undefined || orders.length === 0) return missing;
  const groups = setUpsOf(orders, scenario);
  const campaigns: Campaign[] = [];
  for (const [i, { product, items }] of groups.entries()) {
    const set = product === null ? [] : [`stations.*.product=${JSON.stringify(product)}`];
    const cell = set.length === 0 ? scenario : vary([...settings, ...set]);
    if (cell === undefined) return cannotSetUp(product ?? "");
    campaigns.push({
      scenario: cell,
      quantities: items.map((item) => ({ product: nameIn(scenario, orders, item), quantity: item.quantity })),
      change: i === 0 ? null : changeTo(items, scenario),
    });
  }
  const due = orders.findLast((order) => order.due !== undefined)?.due ?? null;
  return { name: nameOf(scenario, orders), campaigns, due, ...wish };
}

interface SetUp {
  /** Product of all stations; null: the stations as the file has them. */
  readonly product: string | null;
  readonly items: readonly OrderSpec[];
}

/** Orders that follow each other and are made by the same set-up belong together: their products are made at the same time. */
function setUpsOf(orders: readonly OrderSpec[], { stations }: Scenario): readonly SetUp[] {
  const asWritten = new Set(stations.map(({ product }) => product));
  const groups: { product: string | null; items: OrderSpec[] }[] = [];
  for (const order of orders) {
    const product = asWritten.has(order.product) ? null : order.product;
    const last = groups.at(-1);
    if (last?.product === product) last.items = joined(last.items, order);
    else groups.push({ product, items: [order] });
  }
  return groups;
}

/** Two orders of one product are one quantity. */
function joined(items: readonly OrderSpec[], order: OrderSpec): OrderSpec[] {
  const known = items.some(({ product }) => product === order.product);
  if (!known) return [...items, order];
  const sum = (item: OrderSpec): OrderSpec => ({ ...item, quantity: item.quantity + order.quantity });
  return items.map((item) => (item.product === order.product ? sum(item) : item));
}

function changeTo(items: readonly OrderSpec[], { changeovers = [] }: Scenario): Campaign["change"] {
  const found = changeovers.find(({ to }) => items.some(({ product }) => product === to));
  if (found === undefined) return null;
  const { to: _, ...change } = found;
  return change;
}

/** Only where the cell makes several products is one of them named. */
function nameIn({ stations }: Scenario, orders: readonly OrderSpec[], { product }: OrderSpec): string | null {
  const products = new Set([...stations, ...orders].map((each) => each.product));
  return products.size > 1 ? product : null;
}

function nameOf(scenario: Scenario, orders: readonly OrderSpec[]): string {
  const words = orders.map((order) => {
    const product = nameIn(scenario, orders, order);
    return `${order.quantity} parts${product === null ? "" : ` of ${product}`}`;
  });
  return words.join(", ");
}

const missing: Issue = {
  code: "order-missing",
  severity: "error",
  fate: "file",
  option: "--order",
  path: "orders",
  message: "Nothing is ordered.",
  expected: "`orders` in the scenario, or `--order`",
  remedy: 'Add the order: `--order "200000 parts" --due "2026-12-04 14:00"`.',
};

function cannotSetUp(product: string): Issue {
  const set = `stations.*.product=${product}`;
  return {
    code: "order-setup",
    severity: "error",
    fate: "file",
    path: "orders",
    message: `The stations cannot be set up for "${product}".`,
    expected: `a cell that \`--set "${set}"\` gives without a fault`,
    remedy: `See the faults with \`check\` and \`--set "${set}"\`.`,
  };
}
