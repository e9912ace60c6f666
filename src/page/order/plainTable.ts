// A small table of words; the first column names the rows.
import { h, type ComponentChild } from "preact";

interface PlainTableProps {
  readonly caption: string;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly ComponentChild[])[];
}

export function PlainTable({ caption, heads, rows }: PlainTableProps): ComponentChild {
  return h(
    "div",
    { class: "numbers", tabIndex: 0, role: "region", "aria-label": caption },
    h(
      "table",
      {},
      h("caption", {}, caption),
      h(
        "thead",
        {},
        h(
          "tr",
          {},
          heads.map((head) => h(head === "" ? "td" : "th", head === "" ? {} : { scope: "col" }, head)),
        ),
      ),
      h(
        "tbody",
        {},
        rows.map(([name, ...cells]) =>
          h(
            "tr",
            {},
            h("th", { scope: "row" }, name),
            cells.map((cell) => h("td", {}, cell)),
          ),
        ),
      ),
    ),
  );
}
