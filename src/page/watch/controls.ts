// The controls of the run as buttons: play, speed, and jumps to moments, shots and waits.
import { h, type ComponentChild, type TargetedEvent } from "preact";
import type { Watched } from "./watched.ts";

const speeds = [0.25, 0.5, 1, 2, 5, 10, 30];

export function Controls({ watched }: { readonly watched: Watched }): ComponentChild {
  const { playing, speed, seconds, end } = watched;
  const isPlaying = playing.value;
  const isAtEnd = seconds.value >= end.value;
  const button = (label: string, act: () => void, disabled = false): ComponentChild =>
    h("button", { type: "button", onClick: act, "aria-disabled": disabled ? "true" : undefined }, label);
  return h(
    "div",
    { class: "controls", role: "group", "aria-label": "Run" },
    button(isPlaying ? "Pause" : "Play", () => (isPlaying ? watched.pause() : watched.play()), isAtEnd && !isPlaying),
    button("Previous moment", () => watched.step(-1), seconds.value <= 0),
    button("Next moment", () => watched.step(1), isAtEnd),
    button("Previous shot", () => watched.stepShot(-1), seconds.value <= 0),
    button("Next shot", () => watched.stepShot(1), isAtEnd),
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
