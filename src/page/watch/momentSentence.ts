// One sentence for a screen reader: the time, and what has just changed.
import type { Scene } from "#report/scene/scene.ts";
import { resourcesIn } from "#report/scene/sceneWords.ts";
import { seconds } from "#report/words/digits.ts";
import { screenName } from "#report/words/tradeWords.ts";

export function momentSentence(scene: Scene): string {
  const changed = resourcesIn(scene).filter(({ since }) => since === scene.seconds);
  const words = changed.map(({ name, state }) => `${screenName(name)} ${state}`);
  return words.length === 0 ? `${seconds(scene.seconds)}.` : `${seconds(scene.seconds)}: ${words.join(", ")}.`;
}
