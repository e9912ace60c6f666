// The procedure of the levers of an order: few runs find a change that is far from enough, more decide the others.
import { wilsonInterval } from "#analysis/statistics/wilsonInterval.ts";
import { lookAt, lookSizes } from "./looks.ts";
import type { OrderAnswer, OrderTask } from "./orderAnswer.ts";
import { concludeLevers, type ChangedOrder, type OrderLevers } from "./orderLeverStudy.ts";
import type { OrderLever } from "./orderLevers.ts";
import { beginOrder, concludeOrder, withOrderAnswers, type OrderState } from "./orderProcedure.ts";
import { impossibleIssues } from "./impossibleOrder.ts";
import type { OrderStudy } from "./orderStudy.ts";
import { orderRunner } from "./runOrder.ts";

export interface LeverTrial {
  readonly lever: OrderLever;
  readonly state: OrderState;
}

export function beginLevers(levers: readonly OrderLever[]): readonly LeverTrial[] {
  return levers
    .filter(({ order }) => impossibleIssues(order).length === 0)
    .map((lever) => ({ lever, state: beginOrder(lever.order) }));
}

/** The next runs of one change; none where they are enough, or one of them was not finished. */
export function leverRunsWanted({ state: { order, answers } }: LeverTrial): readonly OrderTask[] {
  if (order.due === null || answers.some(({ finish }) => finish === null)) return [];
  const [few, many] = leverSizes(order.chance);
  const onTime = answers.filter(({ finish }) => finish! <= order.due!).length;
  const isOpen = answers.length === 0 || lookAt(onTime, answers.length, order.chance, false).verdict === "undecided";
  const next = answers.length < few ? few : isOpen ? many : answers.length;
  return Array.from({ length: Math.max(0, next - answers.length) }, (_, i) => ({
    replication: answers.length + i + 1,
  }));
}

/** With this many runs a chance has an interval of a few percent. */
const usualRuns = 80;

/** From few runs to as many as are enough where all are on time. */
function leverSizes(chance: number): readonly [few: number, many: number] {
  let many = usualRuns;
  while (many < lookSizes.at(-1)! && wilsonInterval(many, many).low < chance) many += lookSizes[0]!;
  return [lookSizes[0]!, many];
}

export function withLeverAnswers(trial: LeverTrial, answers: readonly OrderAnswer[]): LeverTrial {
  return { ...trial, state: withOrderAnswers(trial.state, answers) };
}

/** Each change as if the call had asked for its number of runs, so that a repeated call gives the same. */
export function leversOfTrials(base: OrderStudy, trials: readonly LeverTrial[]): OrderLevers {
  const changed = trials.flatMap(({ lever, state }): readonly ChangedOrder[] => {
    const order = { ...state.order, replications: state.answers.length };
    const outcome = concludeOrder({ order, answers: state.answers });
    return outcome.kind === "found" ? [{ lever, study: outcome.study }] : [];
  });
  return concludeLevers(base, changed);
}

/** The whole procedure in this thread. */
export function runLevers(base: OrderStudy, levers: readonly OrderLever[]): OrderLevers {
  const trials = beginLevers(levers).map((trial) => {
    const run = orderRunner(trial.lever.order);
    let grown = trial;
    for (let tasks = leverRunsWanted(grown); tasks.length > 0; tasks = leverRunsWanted(grown)) {
      grown = withLeverAnswers(grown, tasks.map(run));
    }
    return grown;
  });
  return leversOfTrials(base, trials);
}
