// The form of an order: quantities, due date, start, work shifts and wanted chance.
import { h, type ComponentChild, type TargetedEvent } from "preact";
import type { Issue } from "#foundation/issue.ts";
import type { OrderForm, OrderLine, TypedForm } from "./form.ts";
import { TextField } from "./textField.ts";

interface OrderFieldsProps {
  readonly form: OrderForm;
  /** Those that the cell knows; none where it makes one. */
  readonly products: readonly string[];
  /** Whether the scenario has work shifts of its own. */
  readonly hasShifts: boolean;
  readonly issues: readonly Issue[];
  readonly keep: (typed: TypedForm) => void;
}

/** Options of the call that have a field. */
export const fieldOptions: readonly string[] = ["--order", "--due", "--start", "--shifts", "--chance"];

export function OrderFields({ form, products, hasShifts, issues, keep }: OrderFieldsProps): ComponentChild {
  const issuesOf = (option: string): readonly Issue[] => issues.filter((issue) => issue.option === option);
  return h(
    "form",
    { class: "order-form", "aria-label": "Order", onSubmit: (event: Event) => event.preventDefault() },
    h(Lines, { lines: form.lines, products, issues: issuesOf("--order"), keep }),
    h(DateField, {
      id: "order-due",
      label: "Due",
      hint: "2026-12-04 14:00, Friday 14:00, or 5 d after the start",
      value: form.due,
      issues: issuesOf("--due"),
      keep: (due) => keep({ due }),
    }),
    h(DateField, {
      id: "order-start",
      label: "Start",
      hint: "2026-11-30 06:00; needed with work shifts",
      value: form.start,
      issues: issuesOf("--start"),
      keep: (start) => keep({ start }),
    }),
    h(TextField, {
      id: "order-chance",
      label: "Wanted chance",
      hint: "Share of such orders that must be on time",
      value: form.chance,
      issues: issuesOf("--chance"),
      keep: (chance) => keep({ chance }),
    }),
    h(Shifts, { shifts: form.shifts, hasShifts, issues: issuesOf("--shifts"), keep }),
  );
}

type PartProps = Pick<OrderFieldsProps, "issues" | "keep">;

function Lines({
  lines,
  products,
  issues,
  keep,
}: PartProps & { readonly lines: readonly OrderLine[]; readonly products: readonly string[] }): ComponentChild {
  const change = (index: number, part: Partial<OrderLine>): void =>
    keep({ lines: lines.map((line, i) => (i === index ? { ...line, ...part } : line)) });
  return h(
    "fieldset",
    { class: "lines" },
    h("legend", {}, products.length > 0 ? "Good parts, made in this order" : "Good parts"),
    lines.map(({ quantity, product }, i) => {
      const number = lines.length > 1 ? ` ${i + 1}` : "";
      return h(
        "div",
        { class: "line", key: i },
        h(TextField, {
          id: `order-quantity-${i}`,
          label: `Quantity${number}`,
          value: quantity,
          issues: i === 0 ? issues : [],
          keep: (text) => change(i, { quantity: text }),
        }),
        products.length === 0
          ? null
          : h(TextField, {
              id: `order-product-${i}`,
              label: `Product${number}`,
              value: product,
              issues: [],
              list: "order-products",
              keep: (text) => change(i, { product: text }),
            }),
        lines.length < 2
          ? null
          : h(
              "button",
              { type: "button", onClick: () => keep({ lines: lines.filter((_, each) => each !== i) }) },
              `Remove quantity${number}`,
            ),
      );
    }),
    products.length === 0
      ? null
      : [
          h(
            "datalist",
            { id: "order-products" },
            products.map((name) => h("option", { value: name })),
          ),
          h(
            "button",
            { type: "button", onClick: () => keep({ lines: [...lines, { quantity: "", product: products[0]! }] }) },
            "Add a quantity",
          ),
        ],
  );
}

interface DateFieldProps extends Pick<PartProps, "issues"> {
  readonly id: string;
  readonly label: string;
  readonly hint: string;
  readonly value: string;
  readonly keep: (text: string) => void;
}

/** Typed as the call takes it, or picked. */
function DateField(props: DateFieldProps): ComponentChild {
  const { id, label, value, keep } = props;
  const isDate = /^\d{4}-\d\d-\d\d \d\d:\d\d$/u.test(value);
  return h(
    "div",
    { class: "date" },
    h(TextField, props),
    h("input", {
      id: `${id}-pick`,
      type: "datetime-local",
      "aria-label": `Pick: ${label}`,
      value: isDate ? value.replace(" ", "T") : "",
      onChange: ({ currentTarget }: TargetedEvent<HTMLInputElement>) => {
        if (currentTarget.value !== "") keep(currentTarget.value.replace("T", " "));
      },
    }),
  );
}

const patterns: readonly (readonly [words: string, text: string])[] = [
  ["1 × 8 h mon–fri", "1 x 8 h, mon-fri"],
  ["2 × 8 h mon–fri", "2 x 8 h, mon-fri"],
  ["3 × 8 h mon–fri", "3 x 8 h, mon-fri"],
  ["24 h every day", "24 h, every day"],
];

function Shifts({
  shifts,
  hasShifts,
  issues,
  keep,
}: PartProps & Pick<OrderFieldsProps, "hasShifts"> & { readonly shifts: string }): ComponentChild {
  const choices = [
    ...(hasShifts ? [["As in the scenario", ""] as const] : [["No work shifts", ""] as const]),
    ...patterns,
  ];
  return h(
    "fieldset",
    { class: "shifts" },
    h("legend", {}, "Work shifts"),
    h(
      "div",
      { class: "patterns" },
      choices.map(([words, text]) =>
        h(
          "button",
          { type: "button", key: text, "aria-pressed": text === shifts, onClick: () => keep({ shifts: text }) },
          words,
        ),
      ),
    ),
    h(TextField, {
      id: "order-shifts",
      label: "Another pattern",
      hint: "2 x 8 h, mon-fri; 1 x 10 h, mon-thu, from 06:00",
      value: shifts,
      issues,
      keep: (text) => keep({ shifts: text }),
    }),
  );
}
