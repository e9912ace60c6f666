// A question with its choices: one is chosen and checked, and then every choice shows its reason.
import { useSignal } from "@preact/signals";
import { useLayoutEffect, useRef } from "preact/hooks";
import { h, type ComponentChild, type TargetedEvent } from "preact";
import type { Choice, Exercise } from "#report/lessons/exercise.ts";

interface ExerciseFormProps {
  readonly exercise: Exercise;
  /** Different for each form on the page. */
  readonly id: string;
  /** Called once, with the choice. */
  readonly onCheck: (isRight: boolean) => void;
}

export function ExerciseForm({ exercise, id, onCheck }: ExerciseFormProps): ComponentChild {
  const chosen = useSignal<number | undefined>(undefined);
  const isChecked = useSignal(false);
  const check = (event: TargetedEvent<HTMLFormElement>): void => {
    event.preventDefault();
    const choice = exercise.choices[chosen.value ?? -1];
    if (isChecked.value || choice === undefined) return;
    isChecked.value = true;
    onCheck(choice.isRight);
  };
  const choices = exercise.choices.map((choice, i) =>
    h(
      "div",
      { class: "choice" },
      h(
        "label",
        {},
        h("input", {
          type: "radio",
          name: id,
          checked: chosen.value === i,
          disabled: isChecked.value,
          onChange: () => {
            chosen.value = i;
          },
        }),
        ` ${choice.text}`,
      ),
      isChecked.value ? h(Reason, { choice }) : null,
    ),
  );
  return h(
    "form",
    { class: "exercise", onSubmit: check },
    h("fieldset", {}, h("legend", {}, exercise.ask), choices),
    isChecked.value
      ? h(Verdict, { isRight: exercise.choices[chosen.value!]!.isRight })
      : h("button", { type: "submit", "aria-disabled": chosen.value === undefined ? "true" : undefined }, "Check"),
  );
}

function Reason({ choice }: { readonly choice: Choice }): ComponentChild {
  return h("p", { class: "reason" }, h("strong", {}, choice.isRight ? "Right. " : "Wrong. "), choice.because);
}

/** Takes the focus, so that a screen reader reads it and the next key goes on from here. */
function Verdict({ isRight }: Pick<Choice, "isRight">): ComponentChild {
  const place = useRef<HTMLParagraphElement>(null);
  useLayoutEffect(() => place.current?.focus(), []);
  const words = isRight ? "Your choice is right." : "Your choice is wrong. The reasons stand beside the choices.";
  return h("p", { class: "verdict", tabIndex: -1, ref: place }, words);
}
