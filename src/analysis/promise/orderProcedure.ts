// The procedure of an order: from the runs so far to the runs still wanted, then to the results.
import { meanInterval } from "#analysis/statistics/interval.ts";
import { quantileInterval } from "#analysis/statistics/quantileInterval.ts";
import { lookAt, lookSizes } from "./looks.ts";
import type { Order } from "./order.ts";
import type { OrderAnswer, OrderTask } from "./orderAnswer.ts";
import { impossibleIssues, unfinishedIssue } from "./impossibleOrder.ts";
import type { DueChance, FinishTime, OrderOutcome, OrderStudy } from "./orderStudy.ts";
import { orderUses, summaryOf } from "./orderUses.ts";
import { orderRunner } from "./runOrder.ts";
import { valuesAt } from "./valuesAt.ts";

/** Runs where only dates are asked for: enough for an interval of the date by which 95 % are done. */
const runsForDates = 100;
/** Shots of all runs together up to which further looks follow: minutes of computing. */
const mostShots = 100_000_000;
/** Shares of the runs that are done. */
const shares = [0.05, 0.5, 0.8, 0.95];

export interface OrderState {
  readonly order: Order;
  /** In the order of replications. */
  readonly answers: readonly OrderAnswer[];
}

export function beginOrder(order: Order): OrderState {
  return { order, answers: [] };
}

export function withOrderAnswers(state: OrderState, answers: readonly OrderAnswer[]): OrderState {
  return { ...state, answers: [...state.answers, ...answers] };
}

/** None when the chance is decided, the cap is reached, or a run could not be finished. */
export function runsWanted(state: OrderState): readonly OrderTask[] {
  const { order, answers } = state;
  if (answers.some(({ finish }) => finish === null)) return [];
  if (answers.length > 0 && (chanceOf(state)?.verdict ?? "undecided") !== "undecided") return [];
  const next = sizesOf(order).find((size) => size > answers.length) ?? answers.length;
  return Array.from({ length: next - answers.length }, (_, i) => ({ replication: answers.length + i + 1 }));
}

/** The numbers of runs after which the procedure looks at the results. */
function sizesOf(order: Order): readonly number[] {
  if (order.replications !== null) return [order.replications];
  if (order.due === null) return [runsForDates];
  const shots = shotsOf(order);
  return lookSizes.filter((size, i) => i === 0 || size * shots <= mostShots);
}

/** Of one run, without rejects. */
function shotsOf({ campaigns }: Pick<Order, "campaigns">): number {
  return campaigns.reduce((sum, { scenario, quantities }) => {
    const cavities = scenario.stations.reduce((all, station) => all + station.cavities, 0) / scenario.stations.length;
    return sum + quantities.reduce((all, { quantity }) => all + quantity, 0) / cavities;
  }, 0);
}

/** Approximate seconds of computing per shot. */
const secondsPerShot = 2e-6;

/** Approximate seconds of one run, to decide whether workers save time. */
export function effortOfRun(order: Order): number {
  return shotsOf(order) * secondsPerShot;
}

/** Null without a due date. */
function chanceOf({ order, answers }: OrderState): DueChance | null {
  const { due, chance, replications: asked } = order;
  if (due === null) return null;
  const finish = finishOf(answers);
  const onTime = finish.filter((seconds) => seconds <= due).length;
  return {
    onTime,
    replications: finish.length,
    share: onTime / finish.length,
    ...lookAt(onTime, finish.length, chance, asked !== null),
    slack: due - valuesAt(finish, [chance])[0]!,
  };
}

function finishOf(answers: readonly OrderAnswer[]): readonly number[] {
  return answers.flatMap(({ finish }) => finish ?? []);
}

export function concludeOrder(state: OrderState): OrderOutcome {
  const { order, answers } = state;
  const unfinished = answers.find(({ finish }) => finish === null);
  if (unfinished) return { kind: "refused", issues: [unfinishedIssue(order, unfinished)] };
  const finish = finishOf(answers);
  const counted = answers.flatMap(({ goodAtDue }) => goodAtDue ?? []);
  const study: OrderStudy = {
    order,
    scenario: order.campaigns[0]!.scenario,
    warnings: [],
    replications: answers.length,
    finish,
    meanFinish: meanInterval(finish),
    times: shares.map((share): FinishTime => {
      return { share, seconds: valuesAt(finish, [share])[0]!, interval: quantileInterval(finish, share) };
    }),
    lines: order.campaigns.flatMap(({ quantities }, campaign) =>
      quantities.map(({ product, quantity }, i) => {
        const seconds = answers.map(({ campaigns }) => campaigns[campaign]!.finished[i]!);
        return { product, quantity, seconds };
      }),
    ),
    due: chanceOf(state),
    goodAtDue: counted.length === 0 ? null : summaryOf("good parts at the due date", "parts", counted),
    ...orderUses(order, answers),
  };
  return { kind: "found", study };
}

/** The whole procedure in this thread. */
export function runOrder(order: Order): OrderOutcome {
  const issues = impossibleIssues(order);
  if (issues.length > 0) return { kind: "refused", issues };
  const run = orderRunner(order);
  let state = beginOrder(order);
  for (let tasks = runsWanted(state); tasks.length > 0; tasks = runsWanted(state)) {
    state = withOrderAnswers(state, tasks.map(run));
  }
  return concludeOrder(state);
}
