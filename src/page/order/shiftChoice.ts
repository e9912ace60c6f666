// The work shifts: those of the scenario, a usual pattern with a click, or another one as text.
import { h, type ComponentChild } from "preact";
import type { Issue } from "#foundation/issue.ts";
import type { TypedForm } from "./form.ts";
import { TextField } from "./textField.ts";

interface ShiftChoiceProps {
  readonly shifts: string;
  /** Whether the scenario has work shifts of its own. */
  readonly hasShifts: boolean;
  readonly issues: readonly Issue[];
  readonly keep: (typed: TypedForm) => void;
}

const patterns: readonly (readonly [words: string, text: string])[] = [
  ["1 × 8 h mon–fri", "1 x 8 h, mon-fri"],
  ["2 × 8 h mon–fri", "2 x 8 h, mon-fri"],
  ["3 × 8 h mon–fri", "3 x 8 h, mon-fri"],
  ["24 h every day", "24 h, every day"],
];

export function ShiftChoice({ shifts, hasShifts, issues, keep }: ShiftChoiceProps): ComponentChild {
  const choices = [[hasShifts ? "As in the scenario" : "No work shifts", ""] as const, ...patterns];
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
