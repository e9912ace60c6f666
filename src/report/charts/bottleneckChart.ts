// What binds the run: the shares of the critical path with their intervals, equal stations taken together.
import type { Study } from "#analysis/study/study.ts";
import type { ChartWords } from "./chart.ts";
import { seconds, withInterval } from "#report/words/digits.ts";
import type { Markup } from "./markup.ts";
import { rankedBars } from "./rankedBars.ts";
import { bottleneckName } from "#report/words/bottleneckWords.ts";
import { stepLook } from "#report/words/stateLook.ts";

const mostBars = 10;
/** A smaller share cannot be seen. */
const leastShare = 0.002;

export function bottleneckChart(study: Pick<Study, "leading" | "bottleneck">, given: ChartWords): Markup {
  const bars = study.leading
    .filter(({ share }) => share.mean >= leastShare)
    .slice(0, mostBars)
    .map((leading) => {
      const { step, role, resources, share } = leading;
      const slack = slackOf(study, step, resources);
      const spare = slack === null ? "" : slack > 0 ? `, ${seconds(slack)} to spare` : ", nothing to spare";
      return {
        name: bottleneckName(leading),
        fill: stepLook(role).fill,
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

/** Of equal stations the least. */
function slackOf({ bottleneck }: Pick<Study, "bottleneck">, step: string, resources: readonly string[]): number | null {
  const slacks = bottleneck
    .filter((row) => row.step === step && resources.includes(row.resource))
    .flatMap(({ slackSeconds }) => (slackSeconds === null ? [] : [slackSeconds]));
  return slacks.length === 0 ? null : slacks.reduce((least, each) => Math.min(least, each));
}
