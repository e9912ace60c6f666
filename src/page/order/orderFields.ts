// The form of an order: quantities, due date, start, work shifts and wanted chance.
import { h, type ComponentChild } from "preact";
import type { Issue } from "#foundation/issue.ts";
import { DateField } from "./dateField.ts";
import type { OrderForm, TypedForm } from "./form.ts";
import { OrderLines } from "./orderLines.ts";
import { ShiftChoice } from "./shiftChoice.ts";
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
    h(OrderLines, { lines: form.lines, products, issues: issuesOf("--order"), keep }),
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
    h(ShiftChoice, { shifts: form.shifts, hasShifts, issues: issuesOf("--shifts"), keep }),
  );
}
