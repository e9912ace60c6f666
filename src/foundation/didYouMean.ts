// The known words that a mistyped one was probably meant to be.
import { distance } from "fastest-levenshtein";

const plain = (word: string): string => word.toLowerCase().replaceAll(/[\s_-]/gu, "");

/** The nearest of the known words first, at most so many; none that is too far away for a typing error. */
export function closestWords(written: string, known: readonly string[], most: number): readonly string[] {
  const wanted = plain(written);
  // One slip in three letters: more, and the suggestion would mislead rather than help.
  const furthest = Math.min(Math.max(1, Math.floor(wanted.length / 3)), wanted.length - 1);
  return known
    .map((word) => ({ word, slips: distance(wanted, plain(word)) }))
    .filter(({ slips }) => slips <= furthest)
    .toSorted((one, other) => one.slips - other.slips)
    .slice(0, most)
    .map(({ word }) => word);
}

/** The nearest of the known words, or undefined where none is near enough. */
export function didYouMean(written: string, known: readonly string[]): string | undefined {
  return closestWords(written, known, 1)[0];
}
