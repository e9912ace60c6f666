// The controls of the run as buttons: play, speed, and jumps to moments, shots and waits.
import { h, type ComponentChild, type TargetedEvent } from "preact";
import type { Watched } from "./watched.ts";

const speeds = [0.25, 0.5, 1, 2, 5, 10, 30];

export function Controls({ watched }: { readonly watched: Watched }): ComponentChild {
  const { playing, speed, seconds, end, record } = watched;
  const isAtStart = seconds.value <= record.from;
  const isPlaying = playing.value;
  const isAtEnd = seconds.value >= end.value;
  const button = (label: string, act: () => void, disabled: boolean, style?: string): ComponentChild =>
    h("button", { type: "button", class: style, onClick: act, "aria-disabled": disabled }, label);
  return h(
    "div",
    { class: "controls", role: "group", "aria-label": "Run" },
    button(
      isPlaying ? "Pause" : "Play",
      () => (isPlaying ? watched.pause() : watched.play()),
      isAtEnd && !isPlaying,
      "play",
    ),
    button("Previous moment", () => watched.step("previous"), isAtStart),
    button("Next moment", () => watched.step("next"), isAtEnd),
    button("Previous shot", () => watched.stepShot("previous"), isAtStart),
    button("Next shot", () => watched.stepShot("next"), isAtEnd),
    button("Next wait", () => watched.nextWait(), isAtEnd),
    h(
      "label",
      {},
      "Speed ",
      h(
        "select",
        {
          onChange: ({ currentTarget }: TargetedEvent<HTMLSelectElement>) => {
            speed.value = Number(currentTarget.value);
          },
        },
        speeds.map((each) => h("option", { value: each, selected: each === speed.value }, `${each} ×`)),
      ),
    ),
  );
}
