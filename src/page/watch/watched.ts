// The run on one timeline: the time that is shown, the chosen resource, and every jump from moment to moment.
import { batch, computed, signal, type ReadonlySignal, type Signal } from "@preact/signals";
import type { Scene, SceneResource } from "#report/scene/scene.ts";
import { stateLook } from "#report/words/stateLook.ts";
import { momentBefore } from "./momentBefore.ts";
import { momentSentence } from "./momentSentence.ts";
import { resourceNamed, sceneResources } from "./sceneResources.ts";
import type { WatchedRun } from "./watchedRun.ts";

export type Direction = 1 | -1;

export interface Watched {
  readonly run: WatchedRun;
  /** Of the run; written by `goTo` and by the clock. */
  readonly seconds: ReadonlySignal<number>;
  readonly scene: ReadonlySignal<Scene>;
  /** Index of the settled moment at or before the time. */
  readonly moment: ReadonlySignal<number>;
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
  /** To the moment at which a station begins its next or this shot. */
  stepShot(direction: Direction): void;
  /** To the next moment at which the chosen resource changes. */
  nextOfChosen(): void;
  /** To the next moment at which a resource begins to wait for another, and chooses this resource. */
  nextWait(): void;
}

/** Seconds of the run a second: half of the molding times of a usual bottle can be followed by eye. */
const usualSpeed = 1;

export function openWatched(run: WatchedRun): Watched {
  const seconds = signal(0);
  const playing = signal(false);
  const hiddenAfter = signal<number | undefined>(undefined);
  const said = signal("");
  const chosen = signal(run.sceneAt(0).stations[0]!.name);
  const end = computed(() => Math.min(run.seconds, hiddenAfter.value ?? run.seconds));
  const moment = computed(() => momentBefore(run.moments, seconds.value));
  const move = (to: number): void => {
    seconds.value = Math.min(Math.max(0, to), end.value);
  };
  const goTo = (to: number): void =>
    batch(() => {
      playing.value = false;
      move(to);
      said.value = momentSentence(run.sceneAt(seconds.value));
    });
  const goToMoment = (index: number | undefined): void => {
    const to = index === undefined ? undefined : run.moments[index];
    if (to !== undefined && to <= end.value) goTo(to);
  };
  /** The next moment at which this holds, of those that may be shown. */
  const find = (holds: (scene: Scene, before: Scene) => boolean, direction: Direction): number | undefined => {
    for (let i = moment.value + direction; i > 0 && i < run.moments.length; i += direction) {
      if (run.moments[i]! > end.value) return undefined;
      if (holds(run.sceneAt(run.moments[i]!), run.sceneAt(run.moments[i - 1]!))) return i;
    }
    return direction < 0 ? 0 : undefined;
  };
  return {
    run,
    seconds,
    scene: computed(() => run.sceneAt(seconds.value)),
    moment,
    playing,
    speed: signal(usualSpeed),
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
      // Between two moments, the way back leads to the one before.
      const isBetween = seconds.value > run.moments[moment.value]!;
      goToMoment(direction < 0 && isBetween ? moment.value : moment.value + direction);
    },
    stepShot(direction) {
      goToMoment(find(beginsShot, direction));
    },
    nextOfChosen() {
      const name = chosen.value;
      goToMoment(find((scene) => resourceNamed(scene, name).since === scene.seconds, 1));
    },
    nextWait() {
      const index = find((scene) => waitThatBegins(scene) !== undefined, 1);
      if (index === undefined) return;
      batch(() => {
        chosen.value = waitThatBegins(run.sceneAt(run.moments[index]!))!.name;
        goToMoment(index);
      });
    },
  };
}

function beginsShot({ stations }: Scene, before: Scene): boolean {
  return stations.some(({ shot }, i) => shot !== null && shot !== before.stations[i]?.shot);
}

/** Idle time that costs no output is no wait. */
function waitThatBegins(scene: Scene): SceneResource | undefined {
  return sceneResources(scene).find(
    ({ state, kind, since }) => since === scene.seconds && stateLook(state, kind).fill === "wait",
  );
}
