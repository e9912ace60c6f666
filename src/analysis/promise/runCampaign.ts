// Runs one campaign of an order until its quantities are made; the length of the run grows until they are.
import { TICKS_PER_SECOND } from "#engine/distributions/sampler.ts";
import { runQuantities, type QuantityRecord } from "#cell/run/runQuantities.ts";
import { planOf } from "#analysis/ideal/planOf.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { campaignCell } from "./campaignCell.ts";
import { idealFinish, longestRun, SECONDS_OF_WEEK, secondsAPart } from "./idealFinish.ts";
import type { Campaign } from "./order.ts";

/** What the ideal cycle gives; computed once for all runs. */
export interface CampaignPace {
  readonly secondsAPart: number;
  /** Seconds of the campaign, if it began at the start of the order. */
  readonly finish: number;
}

export function paceOf(campaign: Campaign): CampaignPace {
  return { secondsAPart: secondsAPart(campaign.scenario), finish: idealFinish({ campaigns: [campaign] }) };
}

export interface CampaignTask {
  readonly campaign: Campaign;
  readonly pace: CampaignPace;
  /** Counted from 0. */
  readonly index: number;
  readonly replication: number;
  /** Seconds from the start of the order. */
  readonly from: number;
  /** Seconds from there at which good parts are counted; null: not at all. */
  readonly countAt: number | null;
  /** Whether the cell goes on after its last wanted part. */
  readonly goesOn: boolean;
}

export interface CampaignRun extends QuantityRecord {
  /** The cell with its length, calendar and changes as they were run. */
  readonly cell: Scenario;
  readonly isDone: boolean;
}

/** What an order takes above its ideal finish; a wrong value costs only computing time. */
const reserve = 1.25;
/** The pace so far may have been slower than that to come. */
const patience = 2;

/** No result depends on the length: a calendar is the same in a longer run. */
export function runCampaign(task: CampaignTask): CampaignRun {
  for (let length = firstLength(task); ; length = Math.min(2 * length, longestRun)) {
    const run = runFor(task, length);
    if (run.isDone || length === longestRun || run.record.standstill || isHopeless(run, task, length)) return run;
  }
}

/** Whole weeks, so that one plan serves all replications. */
function firstLength({ pace, countAt, goesOn }: CampaignTask): number {
  const wanted = Math.max(reserve * pace.finish, goesOn ? (countAt ?? 0) : 0);
  return Math.min(longestRun, SECONDS_OF_WEEK * Math.ceil(wanted / SECONDS_OF_WEEK + 1));
}

function runFor(
  { campaign, pace, index, from, replication, countAt, goesOn }: CampaignTask,
  length: number,
): CampaignRun {
  const cell = campaignCell(campaign, { index, from }, length);
  const isCounted = countAt !== null && countAt <= length;
  const run = runQuantities(planOf(cell), {
    replication,
    wanted: campaign.quantities,
    ticksAPart: pace.secondsAPart * TICKS_PER_SECOND,
    countAt: isCounted ? Math.round(countAt * TICKS_PER_SECOND) : null,
    goesOn,
  });
  return { ...run, cell, isDone: run.reached.every((tick) => tick !== null) };
}

/** At the pace of the run so far the order takes far longer than the longest run. */
function isHopeless({ good }: CampaignRun, { campaign }: CampaignTask, length: number): boolean {
  return campaign.quantities.some(({ quantity }, i) => length * quantity > patience * longestRun * good[i]!);
}
