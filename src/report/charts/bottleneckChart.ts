// What sets the pace of the run: the shares of the critical path with their intervals, by resource, the steps beneath.
import type { Study } from "#analysis/study/study.ts";
import type { ChartWords } from "./chart.ts";
import { seconds, withInterval } from "#report/words/digits.ts";
import type { Markup } from "./markup.ts";
import { rankedBars, type RankedBar } from "./rankedBars.ts";
import { busyWords, resourceName } from "#report/words/bottleneckWords.ts";
import { stepLook } from "#report/words/stateLook.ts";
import { nounOf } from "#report/words/tradeWords.ts";

const mostBars = 14;
/** A smaller share cannot be seen. */
const leastShare = 0.002;

export function bottleneckChart(study: Pick<Study, "bottleneck" | "states">, given: ChartWords): Markup {
  const bars = study.bottleneck.flatMap((resource) => [
    resourceBar(resource, study.states),
    ...resource.steps.map(stepBar),
  ]);
  const shown = bars.filter(({ value }) => value >= leastShare).slice(0, mostBars);
  return rankedBars(shown, { label: "share of the critical path", tick: percentTick }, given);
}

function resourceBar(resource: Study["bottleneck"][number], states: Study["states"]): RankedBar {
  const { share, slackPerShot } = resource;
  return {
    name: `${resourceName(resource)} (${busyWords(resource, states)})`,
    fill: "planned",
    value: share.mean,
    halfWidth: share.halfWidth,
    remark: `${withInterval(share, 100)} %${slackWords(slackPerShot)}`,
  };
}

function stepBar(step: Study["bottleneck"][number]["steps"][number]): RankedBar {
  const { share, role } = step;
  return {
    name: nounOf(step),
    isPart: true,
    fill: stepLook(role).fill,
    value: share.mean,
    halfWidth: share.halfWidth,
    remark: `${withInterval(share, 100)} %`,
  };
}

function slackWords(slack: number | null): string {
  if (slack === null) return "";
  return slack > 0 ? `, slack ${seconds(slack)} a shot` : ", no slack";
}

function percentTick(value: number): string {
  return `${Number((value * 100).toPrecision(3))} %`;
}
