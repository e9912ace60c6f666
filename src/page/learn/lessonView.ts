// A lesson from its first prediction to the question at its end.
import { useSignal } from "@preact/signals";
import { h, type ComponentChild } from "preact";
import type { OpenedLesson } from "#page/answer/openLesson.ts";
import { ExerciseForm } from "./exerciseForm.ts";
import { Heading } from "./heading.ts";
import { StageView } from "./stageView.ts";

interface LessonViewProps {
  readonly lesson: OpenedLesson;
  /** Title of the lesson that follows, and the way there. */
  readonly next: { readonly title: string; readonly open: () => void } | undefined;
}

export function LessonView({ lesson: { solved, records }, next }: LessonViewProps): ComponentChild {
  const step = useSignal(0);
  const isDone = useSignal(false);
  const { stages, question, title, goal } = solved;
  const goOn = (): void => {
    step.value += 1;
    isDone.value = false;
  };
  const finish = (): void => {
    isDone.value = true;
  };
  const stage = stages[step.value];
  const part = stage === undefined ? "the question" : `prediction ${step.value + 1} of ${stages.length}`;
  const onward = step.value + 1 < stages.length ? "Next prediction" : "To the question";
  return h(
    "article",
    { class: "lesson" },
    h(Heading, { words: `${title}: ${part}` }),
    step.value === 0 ? h("p", { class: "quiet" }, `After this lesson: ${goal}`) : null,
    stage === undefined
      ? h(ExerciseForm, { exercise: question, id: "question", onCheck: finish })
      : h(StageView, { key: step.value, stage, record: records[step.value]!, onReveal: finish }),
    isDone.value && stage !== undefined ? h("button", { type: "button", onClick: goOn }, onward) : null,
    isDone.value && stage === undefined && next !== undefined
      ? h("button", { type: "button", onClick: next.open }, `Next lesson: ${next.title}`)
      : null,
  );
}
