// The frame of every chart: an SVG with a title and a description, its row names, its legend, and its numbers in a table below.
import { element, type Attributes, type Child, type Markup } from "./markup.ts";
import { patternDefinitions } from "./patterns.ts";

/** Width of every chart in its own units, which are pixels where the page is wide enough. */
export const chartWidth = 960;

export interface ChartWords {
  /** Unique on its page. */
  readonly id: string;
  readonly title: string;
  /** The content of the picture in words, for readers who do not see it. */
  readonly description: string;
}

export function chart({ id, title, description }: ChartWords, height: number, ...children: readonly Child[]): Markup {
  return element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      viewBox: `0 0 ${chartWidth} ${Math.ceil(height)}`,
      role: "img",
      "aria-labelledby": `${id}-title ${id}-description`,
    },
    element("title", { id: `${id}-title` }, title),
    element("desc", { id: `${id}-description` }, description),
    patternDefinitions(id),
    ...children,
  );
}

interface RowNames {
  /** Width of the column of names in the units of the chart. */
  readonly width: number;
  readonly height: number;
  readonly content: readonly Child[];
}

/** The names of the rows are a layer of their own: they stay in view when the chart scrolls on a narrow page. */
export function namedChart(given: ChartWords, names: RowNames, height: number, ...children: readonly Child[]): Markup {
  const layer = element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      class: "names",
      viewBox: `0 0 ${names.width} ${Math.ceil(names.height)}`,
      width: `${(names.width / chartWidth) * 100}%`,
      "aria-hidden": "true",
    },
    ...names.content,
  );
  return element("div", { class: "sheet" }, chart(given, height, ...children), layer);
}

/** Words with their baseline at x, y; `anchor` says which end of them x is. */
export function words(
  content: string,
  x: number | string,
  y: number,
  options: { readonly anchor?: "start" | "middle" | "end"; readonly style?: string } = {},
): Markup {
  const attributes: Attributes = { x, y, "text-anchor": options.anchor, class: options.style };
  return element("text", attributes, content);
}

type Place = number | string;

export function line(x1: Place, y1: number, x2: Place, y2: number, style: string): Markup {
  return element("line", { x1, y1, x2, y2, class: style });
}

const narrow = new Set("iljtfrI.,:;'|!()[] ");
const wide = new Set("mwMW@%");

/** Width at the charts' 12 px, an upper estimate: fonts differ between machines. */
export function widthOfWords(content: string): number {
  let width = 0;
  for (const letter of content) width += narrow.has(letter) ? 5 : wide.has(letter) ? 12 : 8;
  return width;
}

/** Cut to a width, with an ellipsis where words are cut. */
export function fittedWords(content: string, width: number): string {
  if (widthOfWords(content) <= width) return content;
  const letters = Array.from(content);
  while (letters.length > 1 && widthOfWords(`${letters.join("")}…`) > width) letters.pop();
  return `${letters.join("").trimEnd()}…`;
}

/** A chart and the legend below it. */
export interface Drawing {
  readonly picture: Markup;
  readonly legend: Markup;
}

export interface FigureParts {
  readonly picture: Markup | Drawing;
  readonly caption: readonly Child[];
  readonly table: Markup;
}

/** On a narrow page the picture scrolls in its own box. */
export function figure(label: string, { picture: drawn, caption, table }: FigureParts): Markup {
  const { picture, legend } = "picture" in drawn ? drawn : { picture: drawn, legend: "" };
  return element(
    "figure",
    {},
    element("div", { class: "picture", tabindex: "0", role: "region", "aria-label": `${label}, picture` }, picture),
    legend,
    element("figcaption", {}, ...caption),
    table,
  );
}
