// The timeline as a slider over the settled moments; its value is spoken as a time and what has changed.
import { h, type ComponentChild, type TargetedEvent } from "preact";
import { momentNumber } from "#report/scene/moments.ts";
import { seconds as secondsWords } from "#report/words/digits.ts";
import { momentSentence } from "./momentSentence.ts";
import type { Watched } from "./watched.ts";

export function TimeRange({ watched }: { readonly watched: Watched }): ComponentChild {
  const { record, playing, end, seconds, scene } = watched;
  const { moment } = scene.value;
  const last = momentNumber(record, end.value);
  const spoken = playing.value ? "playing" : `${momentSentence(scene.value)} Moment ${moment + 1} of ${last + 1}.`;
  return h(
    "div",
    { class: "timeline" },
    h("input", {
      type: "range",
      min: 0,
      max: last,
      value: moment,
      "aria-label": "Moment",
      "aria-valuetext": spoken,
      onInput: ({ currentTarget }: TargetedEvent<HTMLInputElement>) =>
        watched.goTo(record.moments[Number(currentTarget.value)] ?? record.from),
    }),
    h("output", {}, `${secondsWords(seconds.value)} of ${secondsWords(end.value)}`),
  );
}
