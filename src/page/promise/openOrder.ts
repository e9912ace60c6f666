// Reads an order as `promise` does, finds the changes that may make it fit, and makes runs of it.
import { orderLevers, type OrderLever } from "#analysis/promise/orderLevers.ts";
import { orderOf } from "#analysis/promise/orderCampaigns.ts";
import { orderRunner } from "#analysis/promise/runOrder.ts";
import type { Order } from "#analysis/promise/order.ts";
import type { OrderAnswer, OrderTask } from "#analysis/promise/orderAnswer.ts";
import { readSettled } from "#analysis/study/readSettled.ts";
import type { Vary } from "#analysis/changes/levers.ts";
import { isFault } from "#foundation/fault.ts";
import type { Issue } from "#foundation/issue.ts";
import type { GivenScenario } from "#page/file/given.ts";
import { parseChance } from "#scenario/order/chanceText.ts";
import { issueOfOrder, readOrderCall, type OrderCall } from "#scenario/order/orderCall.ts";
import type { Scenario } from "#scenario/scenario.ts";

export interface OrderAsked {
  readonly scenario: GivenScenario;
  readonly call: OrderCall & { readonly chance: string };
  /** Settings of the changes that were applied, each as `path=value`. */
  readonly applied: readonly string[];
}

export interface OrderOpening {
  /** Undefined where any issue is an error. */
  readonly order: Order | undefined;
  /** Each names the option of the call or the place in the file. */
  readonly issues: readonly Issue[];
}

export function openOrder(asked: OrderAsked): OrderOpening {
  const { settings, issues: ofCall } = readOrderCall(asked.call);
  const chance = parseChance(asked.call.chance);
  const { scenario, issues: found } = read(asked, []);
  const issues = [
    ...ofCall,
    ...found.map((issue) => issueOfOrder(issue, settings) ?? issueOfSet(issue, asked, settings.length)),
    ...(typeof chance === "number" ? [] : [chanceIssue(chance, asked.call.chance)]),
  ];
  const isRefused = issues.some(({ severity }) => severity === "error");
  if (isRefused || scenario === undefined || typeof chance !== "number") return { order: undefined, issues };
  const order = orderOf(varyOf(asked), [], { chance, replications: null });
  return isFault(order) ? { order: undefined, issues: [...issues, order] } : { order, issues };
}

/** A setting is found by its path; those of the order come before. */
function issueOfSet({ place, ...issue }: Issue, { scenario: { set }, applied }: OrderAsked, before: number): Issue {
  const number = /^--set (\d+)$/.exec(place?.file ?? "")?.[1];
  const text = [...set, ...applied][Number(number ?? 0) - 1 - before];
  if (text === undefined) return place === undefined ? issue : { place, ...issue };
  return { ...issue, option: `--set ${text.split("=")[0]!.trim()}` };
}

export interface LeversAsked {
  readonly asked: OrderAsked;
  readonly order: Order;
}

export const openOrderLevers = ({ asked, order }: LeversAsked): readonly OrderLever[] =>
  orderLevers(varyOf(asked), order);

export interface OrderRunsAsked {
  readonly order: Order;
  readonly tasks: readonly OrderTask[];
}

export const openOrderRuns = ({ order, tasks }: OrderRunsAsked): readonly OrderAnswer[] =>
  tasks.map(orderRunner(order));

const varyOf =
  (asked: OrderAsked): Vary =>
  (more) =>
    read(asked, more).scenario;

function read(
  { scenario: { name, file, text, beside, set }, call, applied }: OrderAsked,
  more: readonly string[],
): { readonly scenario?: Scenario; readonly issues: readonly Issue[] } {
  const ordered = readOrderCall(call).settings.map(({ setting }) => setting);
  const readText = (other: string): string | undefined => (Object.hasOwn(beside, other) ? beside[other] : undefined);
  return readSettled(text, { name, file, set: [...ordered, ...set, ...applied, ...more], readText });
}

function chanceIssue(fault: Exclude<ReturnType<typeof parseChance>, number>, value: string): Issue {
  return { ...fault, severity: "error", fate: "file", option: "--chance", path: "", value };
}
