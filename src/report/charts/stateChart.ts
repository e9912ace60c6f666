// How each resource spends its time: one stacked bar a resource, work on the left and waits on the right.
import type { StateSummary } from "#analysis/study/summarizeStates.ts";
import {
  chartWidth,
  fittedWords,
  line,
  namedChart,
  widthOfWords,
  words,
  type ChartWords,
  type Drawing,
} from "./chart.ts";
import { percent } from "#report/words/digits.ts";
import { legend, stateEntries } from "./legend.ts";
import { element, type Child, type Markup } from "./markup.ts";
import { filledBox } from "./patterns.ts";
import { looksIn, type StateLook } from "#report/words/stateLook.ts";
import { screenName } from "#report/words/tradeWords.ts";
import { straightScale } from "./straightScale.ts";

const gutter = 116;
const right = 84;
const pitch = 34;
const bar = 24;
const top = 30;
const share = straightScale([0, 1], [gutter, chartWidth - right]);
const orderOfKinds = ["working", "set-up", "waiting", "stopped", "off"];

export function stateChart(states: readonly StateSummary[], given: ChartWords): Drawing {
  const seen = states.filter((state) => state.share.mean > 0);
  const resources = [...new Set(states.map(({ resource }) => resource))];
  const bottom = top + resources.length * pitch;
  const lookOf = looksIn(seen);
  const names = resources.map((resource, i) =>
    words(fittedWords(screenName(resource), gutter - 10), 0, top + i * pitch + 16, { style: "name" }),
  );
  const picture = namedChart(
    given,
    { width: gutter - 4, height: bottom, content: names },
    bottom + 4,
    ...axis(bottom),
    ...resources.map((resource, i) => row(sorted(seen, resource), top + i * pitch, lookOf, given.id)),
  );
  return { picture, legend: legend(stateEntries(given.id, seen)) };
}

function axis(bottom: number): readonly Child[] {
  const ticks = [0, 0.25, 0.5, 0.75, 1].flatMap((tick) => [
    line(share(tick), top - 8, share(tick), bottom, "grid"),
    // The first word would reach below the layer of names.
    words(`${tick * 100} %`, share(tick), top - 12, { anchor: tick === 0 ? "start" : "middle", style: "quiet" }),
  ]);
  return [...ticks, words("works", chartWidth, top - 12, { anchor: "end", style: "quiet" })];
}

function sorted(states: readonly StateSummary[], resource: string): readonly StateSummary[] {
  const place = (state: StateSummary): number => orderOfKinds.indexOf(state.kind);
  return states.filter((state) => state.resource === resource).toSorted((one, other) => place(one) - place(other));
}

function row(states: readonly StateSummary[], y: number, lookOf: LookOf, id: string): Markup {
  let sum = 0;
  const pieces = states.map((state) => {
    const x = share(sum);
    sum += state.share.mean;
    return piece(state, lookOf(state), { x, y, width: share(sum) - x, height: bar }, id);
  });
  const works = states.reduce((total, { kind, share: { mean } }) => total + (kind === "working" ? mean : 0), 0);
  return element("g", {}, ...pieces, words(percent(works), chartWidth, y + 16, { anchor: "end" }));
}

type LookOf = ReturnType<typeof looksIn>;

function piece(
  { state, share: { mean } }: StateSummary,
  { fill, letter }: StateLook,
  box: Parameters<typeof filledBox>[2],
  id: string,
): Markup {
  const full = `${state} ${percent(mean)}`;
  const label = [full, `${letter} ${percent(mean)}`, letter].find((text) => widthOfWords(text) + 6 <= box.width) ?? "";
  return element(
    "g",
    {},
    element("title", {}, full),
    ...filledBox(id, fill, box),
    label === "" ? "" : words(label, box.x + box.width / 2, box.y + 16, { anchor: "middle", style: `on ${fill}` }),
  );
}
