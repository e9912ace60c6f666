// One row a layout: good parts from zero with their interval, and beside them how the stations spend their time.
import type { StateSummary } from "#analysis/study/summarizeStates.ts";
import { CELL } from "#analysis/replication/measures.ts";
import type { Study } from "#analysis/study/study.ts";
import { measureOf } from "#analysis/study/summarizeMeasures.ts";
import { grouped, percent, withInterval } from "#report/words/digits.ts";
import { headline } from "#report/words/madeWords.ts";
import { outputUnit } from "#report/words/outputUnit.ts";
import { stateLook } from "#report/words/stateLook.ts";
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
import { legend, stateEntries } from "./legend.ts";
import { element, type Child } from "./markup.ts";
import { filledBox } from "./patterns.ts";
import { lyingWhisker } from "./whisker.ts";
import { straightScale } from "./straightScale.ts";

const gutter = 186;
const remarkWidth = 124;
const middle = 540;
const top = 44;
const pitch = 26;
const bar = 18;
const share = straightScale([0, 1], [middle, chartWidth]);
const orderOfKinds = ["working", "set-up", "waiting", "stopped", "off"];

type StateShare = Pick<StateSummary, "state" | "kind" | "cause" | "share" | "resource">;

export function layoutChart(studies: readonly Study[], given: ChartWords): Drawing {
  const unit = outputUnit(studies);
  const outputs = studies.map(({ measures }) => outputOf(measures, unit.factor));
  const most = Math.max(...outputs.map(({ mean, halfWidth }) => mean + (halfWidth ?? 0)));
  const scale = straightScale([0, most > 0 ? most : 1], [gutter, middle - remarkWidth]);
  const bottom = top + studies.length * pitch;
  const states = studies.map(stationStates);
  const names = studies.map(({ scenario }, i) =>
    words(fittedWords(scenario.name, gutter - 10), 0, top + i * pitch + 18, { style: "name" }),
  );
  const picture = namedChart(
    given,
    { width: gutter - 4, height: bottom, content: names },
    bottom + 4,
    words(unit.words, gutter, top - 30, { style: "quiet" }),
    words("stations, share of time", middle, top - 30, { style: "quiet" }),
    ...axis(scale, bottom, (tick) => grouped(tick)),
    ...axis(share, bottom, (tick) => `${tick * 100} %`),
    ...studies.map((study, i) => {
      const y = top + i * pitch + 4;
      return element("g", {}, ...outputBar(study, outputs[i]!, { y, scale }), ...stateBar(states[i]!, y, given.id));
    }),
  );
  const seen = states.flat().filter((state) => state.share.mean > 0);
  return { picture, legend: legend(stateEntries(given.id, seen)) };
}

interface Output {
  readonly mean: number;
  readonly halfWidth: number | null;
}

function outputOf(measures: Study["measures"], factor: number): Output {
  const interval = measureOf(measures, CELL, headline)?.interval;
  const half = interval?.halfWidth ?? null;
  return { mean: (interval?.mean ?? 0) * factor, halfWidth: half === null ? null : half * factor };
}

function axis(scale: typeof share, bottom: number, label: (tick: number) => string): readonly Child[] {
  return scale.ticks(4).flatMap((tick) => [
    line(scale(tick), top - 6, scale(tick), bottom, "grid"),
    words(label(tick), scale(tick), top - 10, {
      anchor: tick === 1 ? "end" : tick === 0 ? "start" : "middle",
      style: "quiet",
    }),
  ]);
}

interface Row {
  readonly y: number;
  readonly scale: (value: number) => number;
}

function outputBar({ scenario }: Study, { mean, halfWidth }: Output, { y, scale }: Row): readonly Child[] {
  const remark = withInterval({ mean, halfWidth });
  const [low, high] = [Math.max(0, mean - (halfWidth ?? 0)), mean + (halfWidth ?? 0)];
  return [
    element("title", {}, `${scenario.name}: ${remark}`),
    element("rect", { x: gutter, y, width: Math.max(1, scale(mean) - gutter), height: bar, class: "box melt" }),
    ...lyingWhisker(scale(mean), halfWidth ? [scale(low), scale(high)] : null, y + bar / 2),
    words(remark, scale(high) + 10, y + 14),
  ];
}

/** Mean over the stations, work on the left. */
function stationStates({ states, scenario }: Study): readonly StateShare[] {
  const names = scenario.stations.map(({ name }) => name);
  const own = states.filter(({ resource, share: { mean } }) => names.includes(resource) && mean > 0);
  const place = ({ kind }: StateShare): number => orderOfKinds.indexOf(kind);
  return [...new Set(own.map(({ state }) => state))]
    .map((state): StateShare => {
      const alike = own.filter((each) => each.state === state);
      const mean = alike.reduce((sum, each) => sum + each.share.mean, 0) / names.length;
      return { ...alike[0]!, share: { ...alike[0]!.share, mean } };
    })
    .toSorted((one, other) => place(one) - place(other));
}

function stateBar(states: readonly StateShare[], y: number, id: string): readonly Child[] {
  let sum = 0;
  return states.flatMap(({ state, kind, share: { mean } }) => {
    const x = share(sum);
    sum += mean;
    const width = share(sum) - x;
    const { fill, letter } = stateLook(state, kind);
    const full = `${letter} ${percent(mean)}`;
    const label = [full, letter].find((text) => widthOfWords(text) + 4 <= width);
    const box = filledBox(id, fill, { x, y, width, height: bar });
    const text = { anchor: "middle", style: `on ${fill}` } as const;
    return [
      element("g", {}, element("title", {}, `${state} ${percent(mean)}`), ...box),
      ...(label === undefined ? [] : [words(label, x + width / 2, y + 13, text)]),
    ];
  });
}
