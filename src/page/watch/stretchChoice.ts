// The choice of another stretch of the run: later ones have stops, breaks and changes that the first minutes lack.
import { h, type ComponentChild, type TargetedEvent } from "preact";
import type { SceneRecord } from "#report/scene/sceneRecord.ts";
import { grouped } from "#report/words/digits.ts";

interface StretchChoiceProps {
  readonly record: SceneRecord;
  /** Seconds of the whole run. */
  readonly runLength: number;
  readonly showFrom: (seconds: number) => void;
}

const minute = 60;

export function StretchChoice({ record, runLength, showFrom }: StretchChoiceProps): ComponentChild {
  const length = record.until - record.from;
  const last = Math.max(0, Math.floor((runLength - length) / minute));
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
    ` (of ${grouped(Math.round(runLength / minute))})`,
  );
}
