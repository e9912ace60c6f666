// Good parts an hour before and after on one axis, each with its interval.
import { h, type ComponentChild } from "preact";
import { line } from "#report/charts/chart.ts";
import { element } from "#report/charts/markup.ts";
import { lyingWhisker } from "#report/charts/whisker.ts";
import { plainNumber, withInterval } from "#report/words/digits.ts";
import type { Rough } from "./conductRuns.ts";
import { straightScale } from "#report/charts/straightScale.ts";

type Parts = NonNullable<Rough["parts"]>;

interface BeforeAfterProps {
  readonly before: Rough["parts"];
  readonly after: Rough["parts"];
}

/** The axis shows this part of the value beyond both ends, so that small changes look small. */
const margin = 0.02;

export function BeforeAfter({ before, after }: BeforeAfterProps): ComponentChild {
  const rows = [...rowOf(after ? "before" : "as it is", before), ...rowOf("after", after)];
  if (rows.length === 0) return null;
  const ends = rows.flatMap(({ parts }) => endsOf(parts));
  const [low, high] = [Math.min(...ends) * (1 - margin), Math.max(...ends) * (1 + margin)];
  const place = straightScale([low, high > low ? high : low + 1], [0, 100]);
  return h(
    "figure",
    { class: "axis" },
    h("figcaption", {}, "Good parts an hour, with the 95 % confidence interval of the mean"),
    h(
      "ul",
      { class: "bars" },
      rows.map(({ name, parts }) =>
        h(
          "li",
          { key: name },
          h("span", { class: "name" }, name),
          h("span", { dangerouslySetInnerHTML: { __html: track(parts, place) } }),
          h("span", {}, withInterval(parts)),
        ),
      ),
      h(
        "li",
        { class: "head", "aria-hidden": "true" },
        h("span", {}, ""),
        h("span", { class: "ends" }, h("span", {}, plainNumber(low)), h("span", {}, plainNumber(high))),
        h("span", {}, ""),
      ),
    ),
  );
}

const rowOf = (name: string, parts: Rough["parts"]): readonly { readonly name: string; readonly parts: Parts }[] =>
  parts ? [{ name, parts }] : [];

const endsOf = ({ mean, halfWidth }: Parts): readonly [number, number] => [
  mean - (halfWidth ?? 0),
  mean + (halfWidth ?? 0),
];

function track(parts: Parts, place: (value: number) => number): string {
  const at = (value: number): string => `${place(value).toFixed(2)}%`;
  const [low, high] = endsOf(parts);
  return element(
    "svg",
    { class: "track", width: "100%", height: 24, "aria-hidden": "true" },
    line(0, 12, "100%", 12, "grid"),
    ...lyingWhisker(at(parts.mean), parts.halfWidth === null ? null : [at(low), at(high)], 12),
  ).code;
}
