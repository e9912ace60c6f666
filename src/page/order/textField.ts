// A field of text with its label and, beside it, what is wrong with its value in the words of the command line.
import { useSignal } from "@preact/signals";
import { h, type ComponentChild, type TargetedEvent } from "preact";
import type { Issue } from "#foundation/issue.ts";
import { issueWords } from "#report/words/issueWords.ts";

export interface TextFieldProps {
  /** Unique on the page. */
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly issues: readonly Issue[];
  /** What may be typed. */
  readonly hint?: string;
  /** Id of a list of suggestions. */
  readonly list?: string;
  readonly keep: (text: string) => void;
}

export function TextField({ id, label, value, issues, hint, list, keep }: TextFieldProps): ComponentChild {
  // Until it is committed, an answer that arrives must not take back what is typed.
  const draft = useSignal<string | undefined>(undefined);
  const isWrong = issues.some(({ severity }) => severity === "error");
  const described = [...(hint === undefined ? [] : [`${id}-hint`]), ...(issues.length > 0 ? [`${id}-issues`] : [])];
  return h(
    "div",
    { class: "field" },
    h("label", { for: id }, label),
    h("input", {
      id,
      type: "text",
      list,
      autocomplete: "off",
      value: draft.value ?? value,
      "aria-invalid": isWrong ? "true" : undefined,
      "aria-describedby": described.length > 0 ? described.join(" ") : undefined,
      onInput: ({ currentTarget }: TargetedEvent<HTMLInputElement>) => {
        draft.value = currentTarget.value;
      },
      onChange: ({ currentTarget }: TargetedEvent<HTMLInputElement>) => {
        draft.value = undefined;
        keep(currentTarget.value);
      },
    }),
    hint === undefined ? null : h("span", { id: `${id}-hint`, class: "hint" }, hint),
    h(FieldIssues, { id, issues }),
  );
}

function FieldIssues({ id, issues }: Pick<TextFieldProps, "id" | "issues">): ComponentChild {
  if (issues.length === 0) return null;
  const words = issues.map((issue) => {
    const { severity, message, details } = issueWords(issue);
    const rest = details.filter(([name]) => name === "expected" || name === "remedy");
    return h("p", {}, `${severity}: ${message} ${rest.map(([name, text]) => `${name}: ${text}`).join(" ")}`);
  });
  return h("div", { id: `${id}-issues`, class: "wrong" }, words);
}
