// The legend of a chart: one swatch a state, with its letter, in the same order in every chart.
import { element, type Child, type Markup } from "./markup.ts";
import { filledBox } from "./patterns.ts";
import type { StateSummary } from "#analysis/study/summarizeStates.ts";
import { legendName, legendPlace, looksIn, type Fill } from "#report/words/stateLook.ts";

const swatch = { width: 20, height: 14 };

export interface LegendEntry {
  readonly label: string;
  readonly letter: string;
  /** Drawn into a box of the swatch's size. */
  readonly drawn: readonly Child[];
}

type ShownState = Pick<StateSummary, "state" | "kind">;

/** A box of one fill of the chart `id`. */
export function swatchOf(id: string, fill: Fill): readonly Child[] {
  return filledBox(id, fill, { x: 0, y: 0, ...swatch });
}

/** Each state once; `all` are those of the chart, which number the steps that the user named. */
export function stateEntries(id: string, states: readonly ShownState[], all = states): readonly LegendEntry[] {
  const lookOf = looksIn(all);
  const entries = new Map<string, LegendEntry>();
  const place = ({ state, kind }: ShownState): number => legendPlace(state, kind);
  for (const shown of states.toSorted((one, other) => place(one) - place(other))) {
    const label = legendName(shown.state);
    const { fill, letter } = lookOf(shown);
    if (!entries.has(label)) entries.set(label, { label, letter, drawn: swatchOf(id, fill) });
  }
  return [...entries.values()];
}

/** Its lines wrap with the page. */
export function legend(entries: readonly LegendEntry[]): Markup {
  const items = entries.map(({ label, letter, drawn }) => {
    const picture = element("svg", { ...swatch, "aria-hidden": "true" }, ...drawn);
    return element("li", {}, picture, letter === "" ? "" : element("b", {}, letter), element("span", {}, label));
  });
  return element("ul", { class: "legend" }, ...items);
}
