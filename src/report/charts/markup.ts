// Builds HTML and SVG as text in which nothing that a user wrote can ever become markup.

/** Text that is known to be well-formed markup; only `element` makes it. */
export class Markup {
  readonly code: string;

  private constructor(code: string) {
    this.code = code;
  }

  /** Piece by piece, without lists or iterators in between: a page has thousands of elements. */
  static element(name: string, attributes: Attributes, children: readonly Child[]): Markup {
    return Markup.#filled(name, openingTag(name, attributes), children);
  }

  static alike(name: string, attributes: Attributes): (...children: readonly Child[]) => Markup {
    const opening = openingTag(name, attributes);
    return (...children) => Markup.#filled(name, opening, children);
  }

  static #filled(name: string, opening: string, children: readonly Child[]): Markup {
    return new Markup(empty.has(name) ? opening : `${children.reduce(withChild, opening)}</${name}>`);
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

/** Makes elements that differ in their children alone: what they have in common is written once. */
export function alike(name: string, attributes: Attributes): (...children: readonly Child[]) => Markup {
  return Markup.alike(name, attributes);
}

function openingTag(name: string, attributes: Attributes): string {
  let tag = `<${name}`;
  for (const key in attributes) tag += attribute(key, attributes[key]);
  return `${tag}>`;
}

function codeOf(child: Child): string {
  if (child instanceof Markup) return child.code;
  // Joined, many pieces become one; added up, all of them stay until the page is written.
  return typeof child === "string" ? escaped(child) : child.map(codeOf).join("");
}

function withChild(code: string, child: Child): string {
  return code + codeOf(child);
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

/** Few texts hold any of them, and to look is far less than to replace. */
const special = /[&<>"']/;

function escaped(text: string): string {
  return special.test(text) ? text.replace(/[&<>"']/gu, (letter) => entities[letter] ?? letter) : text;
}
