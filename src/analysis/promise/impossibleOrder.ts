// Why an order can never be done: found before any run, or by a run that does not end.
import type { Issue, IssueMeaning } from "#foundation/issue.ts";
import { formatQuantity } from "#foundation/formatQuantity.ts";
import { standstillIssue } from "#analysis/study/standstillIssue.ts";
import { idealFinish, runningSeconds } from "./idealFinish.ts";
import type { Campaign, Order } from "./order.ts";
import type { OrderAnswer } from "./orderAnswer.ts";

export const impossibleOrderCodes = {
  "order-never": [
    "the cell makes no good part of the order",
    "Find out with `run` why no part is good, such as `quality` or a server that rejects all parts.",
  ],
  "order-too-long": ["the order takes longer than two years", "Order fewer parts, or make the cell faster."],
} as const satisfies Readonly<Record<string, IssueMeaning>>;

/** Share of rejects at which no part is good. */
const allParts = 1;

/** Before any run; none where the order may be done. */
export function impossibleIssues(order: Order): readonly Issue[] {
  const hopeless = order.campaigns.find(({ scenario }) => rejectsAll(scenario));
  if (hopeless) return [never(order, reasonFor(hopeless))];
  if (idealFinish(order) !== Infinity) return [];
  const running = order.campaigns.reduce((sum, campaign) => sum + runningSeconds(campaign), 0);
  const time = formatQuantity(running, "time", { digits: 3 });
  return [tooLong(order, `Even without stops and rejects it takes ${time} of running time.`)];
}

function rejectsAll({ quality, takeaway = [] }: Campaign["scenario"]): boolean {
  return (quality?.rejects ?? 0) >= allParts || takeaway.some(({ rejects }) => rejects >= allParts);
}

function reasonFor({ scenario: { quality, takeaway = [] } }: Campaign): string {
  const server = takeaway.find(({ rejects }) => rejects >= allParts);
  if ((quality?.rejects ?? 0) < allParts && server) return `The server ${server.name} rejects every part.`;
  return "`quality.rejects` makes every part a reject.";
}

/** Of a run that ended without the order. */
export function unfinishedIssue(order: Order, answer: OrderAnswer): Issue {
  const { standstill, task, made } = answer;
  const scenario = order.campaigns[0]!.scenario;
  if (standstill) return standstillIssue(scenario, { standstill, task });
  if (made === null || made === 0) return never(order, `Run ${task.replication} makes no good part.`);
  return tooLong(order, `Run ${task.replication} makes ${made} good parts and would need more than two years for all.`);
}

function never(order: Order, why: string): Issue {
  return issueOf("order-never", `The order of ${order.name} can never be done. ${why}`, order);
}

function tooLong(order: Order, why: string): Issue {
  return issueOf("order-too-long", `The order of ${order.name} takes longer than two years. ${why}`, order);
}

function issueOf(code: keyof typeof impossibleOrderCodes, message: string, order: Order): Issue {
  const [, remedy] = impossibleOrderCodes[code];
  return { code, severity: "error", path: "", message, value: order.name, remedy, fate: "cell" };
}
