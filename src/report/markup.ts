// Builds HTML and SVG as text in which nothing that a user wrote can ever become markup.

/** Text that is known to be well-formed markup; only `element` makes it. */
export class Markup {
  readonly code: string;

  private constructor(code: string) {
    this.code = code;
  }

  static element(name: string, attributes: Attributes, children: readonly Child[]): Markup {
    // Piece by piece, without lists in between: a page has thousands of elements.
    let code = `<${name}`;
    for (const key of Object.keys(attributes)) code += attribute(key, attributes[key]);
    code += ">";
    if (empty.has(name)) return new Markup(code);
    for (const child of children) code += codeOf(child);
    return new Markup(`${code}</${name}>`);
  }

  /** A style sheet, which knows no escapes; for texts of our own only. */
  static style(sheet: string): Markup {
    return new Markup(`<style>${sheet}</style>`);
  }
}

/** A string is text, not markup: it is escaped. */
export type Child = Markup | string | readonly Child[];

/** Numbers are rounded to hundredths, which no eye tells apart; an undefined attribute is left out. */
export type Attributes = Readonly<Record<string, string | number | undefined>>;

const empty = new Set(["meta", "br", "hr", "col"]);

export function element(name: string, attributes: Attributes, ...children: readonly Child[]): Markup {
  return Markup.element(name, attributes, children);
}

function codeOf(child: Child): string {
  if (child instanceof Markup) return child.code;
  if (typeof child === "string") return escaped(child);
  let code = "";
  for (const each of child) code += codeOf(each);
  return code;
}

function attribute(key: string, value: string | number | undefined): string {
  if (value === undefined) return "";
  return ` ${key}="${typeof value === "number" ? rounded(value) : escaped(value)}"`;
}

/** Minus zero is written as zero. */
function rounded(value: number): string {
  return String(Number.isInteger(value) ? value : Number(value.toFixed(2)) + 0);
}

const entities: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

function escaped(text: string): string {
  return text.replace(/[&<>"']/gu, (letter) => entities[letter] ?? letter);
}
