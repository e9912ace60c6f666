// A sheet to print: a chart of the chosen scenario with numbers in place of words, and its key on a second page.
import { useMemo } from "preact/hooks";
import { useSignal } from "@preact/signals";
import { h, type ComponentChild } from "preact";
import { blankSheet } from "#report/drills/blankSheet.ts";
import type { SceneRecord } from "#report/scene/sceneRecord.ts";
import { timelineOf } from "#report/scene/timelineOf.ts";
import { Heading } from "./heading.ts";

interface SheetViewProps {
  readonly title: string;
  readonly record: SceneRecord;
  /** Mean seconds between two shots of one station. */
  readonly cycle: number;
}

/** Cycles of a station: what is shown, and what is left out before it. */
const [shownCycles, cyclesBefore] = [1.5, 2];

export function SheetView({ title, record, cycle }: SheetViewProps): ComponentChild {
  const isKeyShown = useSignal(false);
  const { drawing, key } = useMemo(() => drawn(record, cycle), [record, cycle]);
  const ask = "Write beside each number what the resource does there.";
  return h(
    "article",
    { class: "lesson sheet" },
    h(Heading, { words: "Sheet to print" }),
    h("p", {}, `${title}. ${ask}`),
    h(
      "div",
      { class: "picture", tabIndex: 0, role: "group", "aria-label": "Chart without words" },
      h("div", { class: "reel", dangerouslySetInnerHTML: { __html: drawing } }),
    ),
    h(
      "ol",
      { class: "blanks" },
      key.map(({ number }) => h("li", { key: number }, h("span", { class: "blank" }))),
    ),
    h(
      "p",
      { class: "controls" },
      h("button", { type: "button", onClick: () => print() }, "Print sheet and key"),
      h(
        "button",
        { type: "button", "aria-expanded": isKeyShown.value, onClick: () => (isKeyShown.value = !isKeyShown.value) },
        "Key",
      ),
    ),
    h(
      "section",
      { class: isKeyShown.value ? "key" : "key shut", "aria-label": "Key" },
      h("h3", {}, "Key"),
      h(
        "table",
        {},
        h(
          "thead",
          {},
          h(
            "tr",
            {},
            ["Number", "Resource", "State"].map((each) => h("th", { scope: "col" }, each)),
          ),
        ),
        h(
          "tbody",
          {},
          key.map(({ number, resource, state }) =>
            h("tr", { key: number }, h("td", {}, number), h("td", {}, resource), h("td", {}, state)),
          ),
        ),
      ),
    ),
  );
}

function drawn(
  record: SceneRecord,
  cycle: number,
): { readonly drawing: string; readonly key: ReturnType<typeof blankSheet>["key"] } {
  const span = Math.ceil(shownCycles * cycle);
  const from = Math.floor(Math.max(record.from, Math.min(record.from + cyclesBefore * cycle, record.until - span)));
  const kinds = new Map(record.resources.map(({ name, kind }) => [name, kind]));
  const words = {
    id: "sheet",
    title: "Chart without words",
    description: "One row a resource; its bars are numbered.",
  };
  const kindOf = (resource: string): string => kinds.get(resource) ?? resource;
  const { chart, key } = blankSheet(timelineOf(record, from, from + span), kindOf, words);
  return { drawing: chart.code, key };
}
