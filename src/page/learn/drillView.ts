// The drills of one kind, one after the other, with the score of this visit.
import { useSignal } from "@preact/signals";
import { h, type ComponentChild } from "preact";
import type { ShownDrill } from "#page/answer/openDrills.ts";
import { DrillChart } from "./drillChart.ts";
import { ExerciseForm } from "./exerciseForm.ts";
import { Heading } from "./heading.ts";

interface DrillViewProps {
  readonly title: string;
  readonly drills: readonly ShownDrill[];
}

export function DrillView({ title, drills }: DrillViewProps): ComponentChild {
  const number = useSignal(0);
  const checked = useSignal(0);
  const right = useSignal(0);
  const isRevealed = checked.value > number.value;
  const { look, charts, exercise } = drills[number.value]!;
  const check = (isRight: boolean): void => {
    checked.value += 1;
    if (isRight) right.value += 1;
  };
  const isLast = number.value + 1 === drills.length;
  return h(
    "article",
    { class: "lesson", key: number.value },
    h(Heading, { words: `${title} Drill ${number.value + 1} of ${drills.length}` }),
    h("p", {}, look),
    charts.map((chart, i) => h(DrillChart, { key: i, chart, id: `drill-${number.value}-${i}`, isRevealed })),
    h(ExerciseForm, { key: number.value, exercise, id: "drill", onCheck: check }),
    h("p", { role: "status" }, checked.value === 0 ? "" : `Score: ${right.value} of ${checked.value} right.`),
    isRevealed && isLast ? h("p", {}, "This was the last drill of this kind.") : null,
    isRevealed && !isLast ? h("button", { type: "button", onClick: () => (number.value += 1) }, "Next drill") : null,
  );
}
