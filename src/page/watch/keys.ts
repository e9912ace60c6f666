// The keys of the scene: what each does, in one table for the keyboard and for the help.
import type { Direction, Watched } from "./watched.ts";

interface KeySpec {
  /** As the help shows them. */
  readonly shown: readonly string[];
  readonly meaning: string;
  readonly matches: (event: Pick<KeyboardEvent, "key" | "shiftKey">) => boolean;
  readonly act: (watched: Watched, key: string) => void;
}

export const sceneKeys: readonly KeySpec[] = [
  {
    shown: ["Space"],
    meaning: "play or pause",
    matches: ({ key }) => key === " ",
    act: (watched) => (watched.playing.value ? watched.pause() : watched.play()),
  },
  {
    shown: ["←", "→"],
    meaning: "previous or next moment",
    matches: ({ key, shiftKey }) => isArrow(key) && !shiftKey,
    act: (watched, key) => watched.step(directionOf(key)),
  },
  {
    shown: ["Shift + ←", "Shift + →"],
    meaning: "previous or next shot",
    matches: ({ key, shiftKey }) => isArrow(key) && shiftKey,
    act: (watched, key) => watched.stepShot(directionOf(key)),
  },
  {
    shown: ["N"],
    meaning: "next change of the chosen resource",
    matches: ({ key }) => key.toLowerCase() === "n",
    act: (watched) => watched.nextOfChosen(),
  },
  {
    shown: ["W"],
    meaning: "next wait",
    matches: ({ key }) => key.toLowerCase() === "w",
    act: (watched) => watched.nextWait(),
  },
  {
    shown: ["1", "…", "9"],
    meaning: "choose station 1 to 9",
    matches: ({ key }) => /^[1-9]$/u.test(key),
    act: ({ scene, chosen }, key) => {
      const station = scene.value.stations[Number(key) - 1];
      if (station) chosen.value = station.name;
    },
  },
  {
    shown: ["0"],
    meaning: "choose the screw",
    matches: ({ key }) => key === "0",
    act: ({ scene, chosen }) => {
      chosen.value = scene.value.screw.name;
    },
  },
  {
    shown: ["Home", "End"],
    meaning: "start or end of the record",
    matches: ({ key }) => key === "Home" || key === "End",
    act: (watched, key) => watched.goTo(key === "Home" ? watched.record.from : watched.end.value),
  },
];

const isArrow = (key: string): boolean => key === "ArrowLeft" || key === "ArrowRight";
const directionOf = (key: string): Direction => (key === "ArrowRight" ? "next" : "previous");

/** For the element that has the focus; keys of the browser stay its own. */
export function actOnKey(watched: Watched, event: KeyboardEvent): void {
  if (event.ctrlKey || event.altKey || event.metaKey) return;
  const found = sceneKeys.find(({ matches }) => matches(event));
  if (found === undefined) return;
  event.preventDefault();
  found.act(watched, event.key);
}
