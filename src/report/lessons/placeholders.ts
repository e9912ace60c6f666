// The places in a text of a lesson that a value fills: its name in braces.

const placeholder = /\{([^{}]*)\}/gu;

export function placeholdersIn(text: string): readonly string[] {
  return [...text.matchAll(placeholder)].map(([, name = ""]) => name.trim());
}

/** The first letter is a capital where a value begins the text or a sentence. */
export function filledIn(text: string, wordsOf: (name: string) => string): string {
  return text.replaceAll(placeholder, (_, name: string, at: number) => {
    const words = wordsOf(name.trim());
    return /(?:^|[.?!:]\s+)$/u.test(text.slice(0, at)) ? words.charAt(0).toUpperCase() + words.slice(1) : words;
  });
}
