// The legend of a chart: one swatch a state, with its letter, set in as many lines as it takes.
import { chartWidth, widthOfWords, words } from "./chart.ts";
import { element, type Child, type Markup } from "./markup.ts";
import { filledBox } from "./patterns.ts";
import type { StateSummary } from "#analysis/study/summarizeStates.ts";
import { stateLook, legendName } from "#report/words/stateLook.ts";

const lineHeight = 22;
const swatch = { width: 20, height: 14 };
const gap = 16;

export interface LegendEntry {
  readonly label: string;
  readonly letter: string;
  /** Drawn into a box of the swatch's size whose upper left corner is given. */
  readonly draw: (x: number, y: number) => readonly Child[];
}

export interface Legend {
  readonly height: number;
  readonly markup: Markup;
}

/** Each state once, in the order of its first appearance. */
export function stateEntries(
  id: string,
  states: readonly Pick<StateSummary, "state" | "kind">[],
): readonly LegendEntry[] {
  const entries = new Map<string, LegendEntry>();
  for (const { state, kind } of states) {
    const label = legendName(state);
    const { fill, letter } = stateLook(state, kind);
    if (!entries.has(label)) {
      entries.set(label, { label, letter, draw: (x, y) => filledBox(id, fill, { x, y, ...swatch }) });
    }
  }
  return [...entries.values()];
}

export function legend(entries: readonly LegendEntry[], top: number, left = 0): Legend {
  let x = left;
  let y = top;
  const drawn = entries.map(({ label, letter, draw }) => {
    const text = letter === "" ? label : `${letter} ${label}`;
    const width = swatch.width + 6 + widthOfWords(text);
    if (x > left && x + width > chartWidth) {
      x = left;
      y += lineHeight;
    }
    const entry = [...draw(x, y + 3), words(text, x + swatch.width + 6, y + 14)];
    x += width + gap;
    return entry;
  });
  return { height: y + lineHeight - top, markup: element("g", { class: "legend" }, ...drawn) };
}
