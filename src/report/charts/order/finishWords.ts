// The words around the histogram of the finish dates: what it shows, and how to read it.
import type { OrderStudy } from "#analysis/promise/orderStudy.ts";
import type { FigureParts } from "#report/charts/chart.ts";
import { grouped } from "#report/words/digits.ts";

interface FinishWords extends Pick<FigureParts, "caption"> {
  readonly description: string;
}

export function finishWords({ due, replications }: Pick<OrderStudy, "due" | "replications">): FinishWords {
  const runs = grouped(replications);
  const late = due === null ? "" : `, ${grouped(due.onTime)} of them by the due date`;
  return {
    description: `Histogram of the finish dates of ${runs} runs${late}.`,
    caption: [
      `Each of the ${runs} runs has its own random numbers: the spread is that from one run of the order to the next. `,
      ...(due === null ? [] : ["Solid line: due date. Green: on time; amber: late. "]),
      "Dashed lines: dates by which 50, 80 and 95 % of the runs are done.",
    ],
  };
}
