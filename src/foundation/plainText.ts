// Makes text from outside safe to show: a terminal would execute control characters, and marks of direction reorder a page.

// C0 and C1 controls, line and paragraph separators, and the marks that turn the direction of writing.
const controls = /[\p{Cc}\u2028\u2029\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu;

function spell(control: string): string {
  const spelled: Readonly<Record<string, string>> = { "\n": "\\n", "\r": "\\r", "\t": "\\t" };
  return spelled[control] ?? `\\u${(control.codePointAt(0) ?? 0).toString(16).padStart(4, "0")}`;
}

/** One line with control characters spelled out, cut to a readable length. */
export function plainText(text: string, longest = 1000): string {
  const characters = Array.from(text.slice(0, 2 * longest + 2));
  const cut = characters.length > longest ? `${characters.slice(0, longest).join("")} …` : text;
  return cut.replaceAll(controls, spell);
}
