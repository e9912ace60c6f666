// Runs an order once: its campaigns one after another, each until its quantities are made.
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import type { CellRecord } from "#cell/records/cellRecord.ts";
import { operatorNames } from "#cell/words/cycleNames.ts";
import { answerOf } from "#analysis/replication/replicationAnswer.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { idealFinish, SECONDS_OF_WEEK } from "./idealFinish.ts";
import type { Order } from "./order.ts";
import type { CampaignAnswer, OrderAnswer, OrderTask } from "./orderAnswer.ts";
import { paceOf, runCampaign, type CampaignRun } from "./runCampaign.ts";

/** Good parts are counted at a due date up to so many times the ideal finish, or so many seconds, after the start. */
const dueWithin = 4;
const dueWithinSeconds = 2 * SECONDS_OF_WEEK;

/** It depends on the order alone, so that all runs have the count or none has it. */
function countsAtDue(order: Order): boolean {
  return order.due !== null && order.due <= Math.max(dueWithin * idealFinish(order), dueWithinSeconds);
}

export function orderRunner(order: Order): (task: OrderTask) => OrderAnswer {
  const isCounted = countsAtDue(order);
  const paces = order.campaigns.map(paceOf);
  return (task) => {
    const { replication } = task;
    const campaigns: CampaignAnswer[] = [];
    let from = 0;
    let goodAtDue = 0;
    for (const [index, campaign] of order.campaigns.entries()) {
      const left = isCounted ? order.due! - from : -1;
      // At its start a campaign has made nothing.
      const countAt = left > 0 ? left : null;
      const goesOn = index === order.campaigns.length - 1;
      const run = runCampaign({ campaign, pace: paces[index]!, index, replication, from, countAt, goesOn });
      const answer = campaignAnswer(run, from);
      if (!run.isDone) return { ...unfinished, task, campaigns, made: sum(run.good), standstill: answer.standstill };
      if (countAt !== null) goodAtDue += run.counted ?? sum(campaign.quantities.map(({ quantity }) => quantity));
      campaigns.push(answer.campaign);
      from += answer.campaign.seconds;
    }
    return { task, campaigns, finish: from, goodAtDue: isCounted ? goodAtDue : null, made: null, standstill: null };
  };
}

const unfinished = { finish: null, goodAtDue: null } as const;

interface Answered {
  readonly campaign: CampaignAnswer;
  readonly standstill: OrderAnswer["standstill"];
}

function campaignAnswer({ record, cell, reached }: CampaignRun, from: number): Answered {
  const { measures, elementTimes, resin, standstill } = answerOf(
    { replication: record.replication, scale: null },
    record,
  );
  const finished = reached.map((tick) => (tick ?? 0) / TICKS_PER_SECOND);
  const seconds = Math.max(...finished);
  return {
    standstill,
    campaign: {
      seconds,
      measures,
      elementTimes,
      resin,
      operatorSeconds: { onShift: onShiftSeconds(cell, seconds), worked: workedSeconds(cell, record) },
      finished: finished.map((each) => from + each),
    },
  };
}

/** Of all operators together, without breaks. */
function onShiftSeconds({ calendar, operators }: Scenario, seconds: number): number {
  const away = sum(
    (calendar?.operators ?? []).flatMap((own) =>
      own.map(({ from, until }) => Math.max(0, Math.min(seconds, until) - from)),
    ),
  );
  return operators * seconds - away;
}

function workedSeconds({ operators }: Scenario, { stateTimes }: CellRecord): number {
  const names = operatorNames(operators);
  const working = stateTimes.filter(({ resource, kind }) => kind === "working" && names.includes(resource));
  return sum(working.map(({ ticks }) => ticks)) / TICKS_PER_SECOND;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
