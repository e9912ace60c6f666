// The known word that a mistyped one was probably meant to be.
import { distance } from "fastest-levenshtein";

/** The nearest of the known words, or undefined where none is near enough to be a slip of the finger. */
export function didYouMean(written: string, known: readonly string[]): string | undefined {
  const plain = written.toLowerCase().replaceAll(/[\s_-]/gu, "");
  let best: string | undefined;
  let least = Infinity;
  for (const word of known) {
    const slips = distance(plain, word.toLowerCase().replaceAll(/[\s_-]/gu, ""));
    if (slips < least) [best, least] = [word, slips];
  }
  // One slip in three letters: more, and the suggestion would mislead rather than help.
  return least <= Math.max(1, Math.floor(plain.length / 3)) && least < plain.length ? best : undefined;
}
