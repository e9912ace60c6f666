// The known word closest to a mistyped one.
import { distance } from "fastest-levenshtein";

/** The closest known word, or undefined where none is close enough for a typing error. */
export function didYouMean(written: string, known: readonly string[]): string | undefined {
  const plain = written.toLowerCase().replaceAll(/[\s_-]/gu, "");
  let best: string | undefined;
  let least = Infinity;
  for (const word of known) {
    const slips = distance(plain, word.toLowerCase().replaceAll(/[\s_-]/gu, ""));
    if (slips < least) [best, least] = [word, slips];
  }
  // One wrong letter in three; a more distant suggestion would mislead.
  return least <= Math.max(1, Math.floor(plain.length / 3)) && least < plain.length ? best : undefined;
}
