// What sets the pace of the run: the shares of the critical path with their intervals, by resource, the steps beneath.
import { stateNames } from "#cell/words/stateNames.ts";
import type { Study } from "#analysis/study/study.ts";
import type { ChartWords } from "./chart.ts";
import { seconds, withInterval } from "#report/words/digits.ts";
import type { Markup } from "./markup.ts";
import { rankedBars, type RankedBar } from "./rankedBars.ts";
import { busyWords, resourceName, stepName } from "#report/words/bottleneckWords.ts";
import { stateLook, stepLook } from "#report/words/stateLook.ts";

const mostBars = 14;
/** A smaller share cannot be seen. */
const leastShare = 0.002;

export function bottleneckChart(study: Pick<Study, "bottleneck">, given: ChartWords): Markup {
  const bars = study.bottleneck.flatMap((resource) => [resourceBar(resource), ...resource.steps.map(stepBar)]);
  const shown = bars.filter(({ value }) => value >= leastShare).slice(0, mostBars);
  return rankedBars(shown, { label: "share of the critical path", tick: percentTick }, given);
}

function resourceBar(resource: Study["bottleneck"][number]): RankedBar {
  const { share, slackPerShot } = resource;
  return {
    name: resourceName(resource),
    fill: stateLook(stateNames.neutral, "waiting").fill,
    value: share.mean,
    halfWidth: share.halfWidth,
    remark: `${withInterval(share, 100)} %, ${busyWords(resource)}${slackWords(slackPerShot, " a shot")}`,
  };
}

function stepBar(step: Study["bottleneck"][number]["steps"][number]): RankedBar {
  const { share, role, slackSeconds } = step;
  return {
    name: `– ${stepName(step)}`,
    fill: stepLook(role).fill,
    value: share.mean,
    halfWidth: share.halfWidth,
    remark: `${withInterval(share, 100)} %${slackWords(slackSeconds)}`,
  };
}

function slackWords(slack: number | null, per = ""): string {
  if (slack === null) return "";
  return slack > 0 ? `, slack ${seconds(slack)}${per}` : ", no slack";
}

function percentTick(value: number): string {
  return `${Number((value * 100).toPrecision(3))} %`;
}
