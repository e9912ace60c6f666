// What binds the run: the shares of the critical path with their intervals, equal stations taken together.
import type { Study } from "#analysis/study/study.ts";
import type { ChartWords } from "./chart.ts";
import { seconds, withInterval } from "#report/words/digits.ts";
import type { Markup } from "./markup.ts";
import { rankedBars } from "./rankedBars.ts";
import { stateLook, type Fill } from "#report/words/stateLook.ts";
import { nounOf, stepOf } from "#report/words/tradeWords.ts";

const mostBars = 10;
/** A smaller share cannot be seen. */
const leastShare = 0.002;

export function bottleneckChart(study: Pick<Study, "leading" | "bottleneck">, given: ChartWords): Markup {
  const bars = study.leading
    .filter(({ share }) => share.mean >= leastShare)
    .slice(0, mostBars)
    .map(({ step, resources, share }) => {
      const slack = slackOf(study, step, resources);
      const spare = slack === null ? "" : slack > 0 ? `, ${seconds(slack)} to spare` : ", nothing to spare";
      return {
        name: stepOf(step, resources),
        fill: fillOf(step, resources),
        value: share.mean,
        halfWidth: share.halfWidth,
        remark: `${withInterval(share, 100)} %${spare}`,
      };
    });
  return rankedBars(bars, { label: "share of the critical path", tick: percentTick }, given);
}

function percentTick(value: number): string {
  return `${Number((value * 100).toPrecision(3))} %`;
}

/** The states of the valve have names of their own; a server that does its own work is named as its work. */
function fillOf(step: string, [resource = ""]: readonly string[]): Fill {
  const told = stateOfStep[step] ?? { state: nounOf(step), kind: "working" };
  if (step.startsWith("shift to")) return stateLook("shifting", "working").fill;
  return step === resource ? stateLook("working", "working").fill : stateLook(told.state, told.kind).fill;
}

/** Steps whose states bear other names, or are no work. */
const stateOfStep: Readonly<Record<string, { readonly state: string; readonly kind: string }>> = {
  stopped: { state: "stopped", kind: "stopped" },
  "on break": { state: "on break", kind: "off" },
  "heat up": { state: "heating", kind: "working" },
  purge: { state: "purging", kind: "working" },
};

/** Of equal stations the least. */
function slackOf({ bottleneck }: Pick<Study, "bottleneck">, step: string, resources: readonly string[]): number | null {
  const slacks = bottleneck
    .filter((row) => row.step === step && resources.includes(row.resource))
    .flatMap(({ slackSeconds }) => (slackSeconds === null ? [] : [slackSeconds]));
  return slacks.length === 0 ? null : slacks.reduce((least, each) => Math.min(least, each));
}
