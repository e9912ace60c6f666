// A text as one word of a shell's call.

/** Double quotes do in every usual shell, as long as none of its signs is within. */
export function shellWord(text: string): string {
  if (/^[\w./:@%+=-]+$/u.test(text)) return text;
  return /["$`\\!]/u.test(text) ? `'${text.replaceAll("'", String.raw`'\''`)}'` : `"${text}"`;
}
