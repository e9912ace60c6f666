// All findings of each layout of a large comparison, folded until the reader opens them.
import { element, type Markup } from "#report/charts/markup.ts";
import { sectionMarkup, type Section } from "./htmlPage.ts";

export interface LayoutDetails {
  readonly name: string;
  readonly sections: readonly Section[];
}

export function layoutDetails(layouts: readonly LayoutDetails[]): Section {
  return {
    id: "each-layout",
    heading: "Each layout",
    body: [
      element("p", {}, "Cycles, time by state, bottleneck, process window and input. What is folded is not printed."),
      ...layouts.map(folded),
    ],
  };
}

function folded({ name, sections }: LayoutDetails): Markup {
  return element(
    "details",
    {},
    element("summary", {}, name),
    ...sections.map((section) => sectionMarkup(section, "h3")),
  );
}
