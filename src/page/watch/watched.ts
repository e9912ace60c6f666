// The run on one timeline: the time that is shown, the chosen resource, and every jump from moment to moment.
import { batch, computed, signal, type ReadonlySignal, type Signal } from "@preact/signals";
import { momentNumber, nextMoment, previousMoment, shotFrom } from "#report/scene/moments.ts";
import type { Scene, SceneResource } from "#report/scene/scene.ts";
import { sceneAt } from "#report/scene/sceneAt.ts";
import type { SceneRecord } from "#report/scene/sceneRecord.ts";
import { resourcesIn } from "#report/scene/sceneWords.ts";
import { stateLook } from "#report/words/stateLook.ts";
import { momentSentence } from "./momentSentence.ts";
import { resourceNamed } from "./resourceNamed.ts";

export type Direction = "next" | "previous";

export interface Watched {
  readonly record: SceneRecord;
  /** Of the run; written by `goTo` and by the clock. */
  readonly seconds: ReadonlySignal<number>;
  readonly scene: ReadonlySignal<Scene>;
  readonly playing: ReadonlySignal<boolean>;
  /** Seconds of the run a second. */
  readonly speed: Signal<number>;
  /** Name of the resource whose words are shown. */
  readonly chosen: Signal<string>;
  /** The curtain: nothing after it is shown or reached. Undefined where nothing is hidden. */
  readonly hiddenAfter: Signal<number | undefined>;
  /** The last time that may be shown: the curtain, or the end of the record. */
  readonly end: ReadonlySignal<number>;
  /** One sentence for a screen reader; it changes with each step and stays while the run plays. */
  readonly said: ReadonlySignal<string>;
  play(): void;
  pause(): void;
  /** Moves the time without a word, as the clock does. */
  move(seconds: number): void;
  /** Pauses, moves and says where. */
  goTo(seconds: number): void;
  step(direction: Direction): void;
  /** To the next or previous parison of any station. */
  stepShot(direction: Direction): void;
  /** To the next moment at which the chosen resource changes. */
  nextOfChosen(): void;
  /** To the next moment at which a resource begins to wait for another, and chooses this resource. */
  nextWait(): void;
}

export function openWatched(record: SceneRecord): Watched {
  const seconds = signal(record.from);
  const playing = signal(false);
  const hiddenAfter = signal<number | undefined>(undefined);
  const said = signal("");
  const scene = computed(() => sceneAt(record, seconds.value));
  const chosen = signal(scene.peek().stations[0]!.name);
  const end = computed(() => Math.min(record.until, hiddenAfter.value ?? record.until));
  const move = (to: number): void => {
    seconds.value = Math.min(Math.max(record.from, to), end.value);
  };
  const goTo = (to: number): void =>
    batch(() => {
      playing.value = false;
      move(to);
      said.value = momentSentence(scene.value);
    });
  /** Nowhere where there is no such time, and none that is hidden. */
  const goIfShown = (to: number | null | undefined): void => {
    if (to !== null && to !== undefined && to <= end.value) goTo(to);
  };
  /** The first scene after this time, of those that may be shown, in which this holds. */
  const nextScene = (holds: (scene: Scene) => boolean): Scene | undefined => {
    for (let i = momentNumber(record, seconds.value) + 1; i < record.moments.length; i++) {
      const then = sceneAt(record, record.moments[i]!);
      if (then.seconds > end.value) return undefined;
      if (holds(then)) return then;
    }
    return undefined;
  };
  return {
    record,
    seconds,
    scene,
    playing,
    speed: signal(1),
    chosen,
    hiddenAfter,
    end,
    said,
    play() {
      if (seconds.value < end.value) playing.value = true;
    },
    pause() {
      goTo(seconds.value);
    },
    move,
    goTo,
    step(direction) {
      goIfShown(direction === "next" ? nextMoment(record, scene.value) : previousMoment(record, scene.value));
    },
    stepShot(direction) {
      const shots = scene.value.stations.flatMap(({ name }) => shotFrom(record, name, seconds.value, direction) ?? []);
      if (shots.length > 0) goIfShown(direction === "next" ? Math.min(...shots) : Math.max(...shots));
    },
    nextOfChosen() {
      const name = chosen.value;
      goIfShown(nextScene((then) => resourceNamed(then, name).since === then.seconds)?.seconds);
    },
    nextWait() {
      const found = nextScene((then) => waitThatBegins(then) !== undefined);
      if (found === undefined) return;
      batch(() => {
        chosen.value = waitThatBegins(found)!.name;
        goTo(found.seconds);
      });
    },
  };
}

/** Idle time that costs no output is no wait. */
function waitThatBegins(scene: Scene): SceneResource | undefined {
  return resourcesIn(scene).find(
    ({ state, kind, since }) => since === scene.seconds && stateLook(state, kind).fill === "wait",
  );
}
