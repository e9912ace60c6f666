// Moves the run while it plays: from frame to frame, or from moment to moment where the user wants no motion.
import { effect } from "@preact/signals";
import { nextMoment } from "#report/scene/moments.ts";
import type { Watched } from "./watched.ts";

/** Seconds that a moment stays where the user wants no motion. */
const stillSeconds = 1.5;
/** A page that was hidden goes on where it was. */
const longestFrame = 0.25;

/** Runs until the returned function is called. */
export function startClock(watched: Watched): () => void {
  const still = matchMedia("(prefers-reduced-motion: reduce)");
  let frame = 0;
  let rest = 0;
  const advance = (passed: number): void => {
    const { record, scene, seconds, speed } = watched;
    if (!still.matches) return watched.move(seconds.value + passed * speed.value);
    rest += passed;
    if (rest < stillSeconds) return;
    rest = 0;
    watched.move(nextMoment(record, scene.value) ?? record.until);
  };
  const stop = effect(() => {
    if (!watched.playing.value) return undefined;
    let before: number | undefined;
    const tick = (now: number): void => {
      advance(before === undefined ? 0 : Math.min((now - before) / 1000, longestFrame));
      before = now;
      if (watched.seconds.value >= watched.end.value) watched.pause();
      else frame = requestAnimationFrame(tick);
    };
    rest = 0;
    frame = requestAnimationFrame(tick);
    return () => cancelAnimationFrame(frame);
  });
  return stop;
}
