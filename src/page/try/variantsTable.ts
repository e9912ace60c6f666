// The kept variants side by side: one column each, one row a finding.
import { h, type ComponentChild } from "preact";
import { useUnits } from "#page/units/unitsOfPage.ts";
import type { Trying } from "./trying.ts";

export function VariantsTable({ trying }: { readonly trying: Trying }): ComponentChild {
  const { variants, before, given } = trying;
  const units = useUnits();
  if (variants.value.length === 0) return null;
  const base = before.value && "made" in before.value ? before.value.conclusion : undefined;
  const columns = [
    ...(base?.kind === "found" ? [{ name: `${given.name} as it is`, set: [], finding: base, variant: undefined }] : []),
    ...variants.value
      .filter(({ set }) => set.length > 0)
      .map((variant) => ({ name: variant.set.join("; "), set: variant.set, finding: variant.finding, variant })),
  ];
  const rows = [...new Set(columns.flatMap(({ finding }) => Object.keys(finding.inShort)))];
  return h(
    "section",
    { "aria-label": "Variants" },
    h("h2", {}, "Variants"),
    h(
      "div",
      { class: "numbers", tabIndex: 0, role: "region", "aria-label": "Variants, table" },
      h(
        "table",
        { class: "variants" },
        h("caption", {}, "The variants that were kept, beside the scenario as it is"),
        h(
          "thead",
          {},
          h(
            "tr",
            {},
            h("td", {}),
            columns.map(({ name }) => h("th", { scope: "col" }, name)),
          ),
        ),
        h(
          "tbody",
          {},
          rows.map((row) =>
            h(
              "tr",
              { key: row },
              h("th", { scope: "row" }, row),
              columns.map(({ finding }) => h("td", {}, finding.inShort[row] ?? "")),
            ),
          ),
          h(
            "tr",
            {},
            h("th", { scope: "row" }, "Warnings"),
            columns.map(({ finding }) =>
              h("td", {}, finding.inUnits[units].warnings.map((line) => line.trim()).join(" ") || "none"),
            ),
          ),
          h(
            "tr",
            {},
            h("td", {}),
            columns.map(({ name, set, variant }) =>
              h(
                "td",
                {},
                h("button", { type: "button", onClick: () => trying.show(set), "aria-label": `Show ${name}` }, "Show"),
                variant
                  ? h(
                      "button",
                      { type: "button", onClick: () => trying.drop(variant), "aria-label": `Drop ${name}` },
                      "Drop",
                    )
                  : null,
              ),
            ),
          ),
        ),
      ),
    ),
  );
}
