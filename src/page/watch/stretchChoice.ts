// The choice of another stretch of the run: later ones have stops, breaks and changes that the first minutes lack.
import { h, type ComponentChild, type TargetedEvent } from "preact";
import type { SceneRecord } from "#report/scene/sceneRecord.ts";
import { spokenWallTime } from "#scenario/resolving/wallTime.ts";
import type { Scenario } from "#scenario/scenario.ts";
import { grouped } from "#report/words/digits.ts";

interface StretchChoiceProps {
  readonly record: SceneRecord;
  readonly scenario: Scenario;
  readonly showFrom: (seconds: number) => void;
}

const minute = 60;

export function StretchChoice({ record, scenario: { run, calendar }, showFrom }: StretchChoiceProps): ComponentChild {
  const length = record.until - record.from;
  const last = Math.max(0, Math.floor((run.length - length) / minute));
  if (last === 0) return null;
  return h(
    "label",
    { class: "stretch" },
    `Shown are ${grouped(Math.round(length / minute))} min of the run, from minute `,
    h("input", {
      type: "number",
      min: 0,
      max: last,
      value: Math.round(record.from / minute),
      onChange: ({ currentTarget }: TargetedEvent<HTMLInputElement>) => {
        const minutes = Math.min(Math.max(0, Math.round(currentTarget.valueAsNumber || 0)), last);
        showFrom(minutes * minute);
      },
    }),
    ` (of ${grouped(Math.round(run.length / minute))})${calendar ? `, ${spokenWallTime(record.from, calendar)}` : ""}`,
  );
}
