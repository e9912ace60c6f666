// The timeline as a slider over the settled moments; its value is spoken as a time and what has changed.
import { h, type ComponentChild, type TargetedEvent } from "preact";
import { seconds as secondsWords } from "#report/words/digits.ts";
import { momentBefore } from "./momentBefore.ts";
import { momentSentence } from "./momentSentence.ts";
import type { Watched } from "./watched.ts";

export function TimeRange({ watched }: { readonly watched: Watched }): ComponentChild {
  const { run, moment, playing, end, seconds, scene } = watched;
  const last = momentBefore(run.moments, end.value);
  const spoken = playing.value
    ? "playing"
    : `${momentSentence(scene.value)} Moment ${moment.value + 1} of ${last + 1}.`;
  return h(
    "div",
    { class: "timeline" },
    h("input", {
      type: "range",
      min: 0,
      max: last,
      value: moment.value,
      "aria-label": "Moment",
      "aria-valuetext": spoken,
      onInput: ({ currentTarget }: TargetedEvent<HTMLInputElement>) =>
        watched.goTo(run.moments[Number(currentTarget.value)] ?? 0),
    }),
    h("output", {}, `${secondsWords(seconds.value)} of ${secondsWords(end.value)}`),
  );
}
