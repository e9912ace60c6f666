// One prediction of a lesson: the cell up to the curtain, the question, and after the choice what followed and why.
import { useSignal } from "@preact/signals";
import { useEffect, useMemo } from "preact/hooks";
import { h, type ComponentChild } from "preact";
import { startClock } from "#page/watch/clock.ts";
import { Controls } from "#page/watch/controls.ts";
import { ScenePanel } from "#page/watch/scenePanel.ts";
import { TimeRange } from "#page/watch/timeRange.ts";
import { TimingPanel } from "#page/watch/timingPanel.ts";
import { openWatched, type Watched } from "#page/watch/watched.ts";
import type { SolvedStage } from "#report/lessons/solveLesson.ts";
import type { SceneRecord } from "#report/scene/sceneRecord.ts";
import { ExerciseForm } from "./exerciseForm.ts";

interface StageViewProps {
  readonly stage: SolvedStage;
  readonly record: SceneRecord;
  /** Called when the curtain is drawn. */
  readonly onReveal: () => void;
}

export function StageView({ stage, record, onReveal }: StageViewProps): ComponentChild {
  const watched = useMemo(() => openAt(stage, record), [stage, record]);
  useEffect(() => startClock(watched), [watched]);
  const isRevealed = useSignal(false);
  const reveal = (): void => {
    isRevealed.value = true;
    watched.hiddenAfter.value = undefined;
    onReveal();
  };
  return [
    h("p", {}, stage.look),
    h(
      "div",
      { class: "watch" },
      h(ScenePanel, { watched }),
      h(Controls, { watched }),
      h(TimeRange, { watched }),
      // The chart shows all of the record.
      h(TimingPanel, { watched, cycle: record.until - record.from }),
      h("p", { class: "spoken", role: "status" }, watched.said),
    ),
    h(ExerciseForm, { exercise: stage.predict, id: "predict", onCheck: reveal }),
    isRevealed.value
      ? h("div", { class: "reveal" }, h("p", { class: "finding" }, stage.reveal), h("p", {}, stage.explain))
      : null,
  ];
}

/** At the curtain. */
function openAt({ at, resource }: SolvedStage, record: SceneRecord): Watched {
  const watched = openWatched(record);
  watched.hiddenAfter.value = at;
  watched.chosen.value = resource;
  watched.move(at);
  return watched;
}
