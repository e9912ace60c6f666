// Builds HTML and SVG as text and escapes everything that a user wrote.

/** Text that is known to be well-formed markup; only `element` makes it. */
export class Markup {
  readonly code: string;

  private constructor(code: string) {
    this.code = code;
  }

  /** In a loop without intermediate lists: a page has thousands of elements. */
  static element(name: string, attributes: Attributes, children: readonly Child[]): Markup {
    return Markup.#filled(name, openingTag(name, attributes), children);
  }

  static alike(name: string, attributes: Attributes): (...children: readonly Child[]) => Markup {
    const opening = openingTag(name, attributes);
    return (...children) => Markup.#filled(name, opening, children);
  }

  static #filled(name: string, opening: string, children: readonly Child[]): Markup {
    const keys = textOnly.has(name) ? quoted : asCode;
    const inside = children.reduce((code: string, child) => code + codeOf(child, keys), opening);
    return new Markup(empty.has(name) ? opening : `${inside}</${name}>`);
  }

  /** A style sheet is not escaped; only for constant texts. */
  static style(sheet: string): Markup {
    return new Markup(`<style>${sheet}</style>`);
  }
}

/** A string is text, not markup: it is escaped. */
export type Child = Markup | string | readonly Child[];

/** Numbers are rounded to hundredths of a pixel; an undefined attribute is left out. */
export type Attributes = Readonly<Record<string, string | number | undefined>>;

const empty = new Set(["meta", "br", "hr", "col"]);

/** They hold no other markup. */
const textOnly = new Set(["title", "text", "tspan"]);

/** How a key between backticks is shown. */
const asCode = "<code>$1</code>";
const quoted = "“$1”";

export function element(name: string, attributes: Attributes, ...children: readonly Child[]): Markup {
  return Markup.element(name, attributes, children);
}

/** Makes elements that differ only in their children: the opening tag is written once. */
export function alike(name: string, attributes: Attributes): (...children: readonly Child[]) => Markup {
  return Markup.alike(name, attributes);
}

function openingTag(name: string, attributes: Attributes): string {
  let tag = `<${name}`;
  for (const key in attributes) tag += attribute(key, attributes[key]);
  return `${tag}>`;
}

function codeOf(child: Child, keys: string): string {
  if (child instanceof Markup) return child.code;
  // `join` makes one string; repeated addition would keep all pieces until the page is written.
  return typeof child === "string" ? withKeys(escaped(child), keys) : child.map((each) => codeOf(each, keys)).join("");
}

/** Keys and values of a scenario stand between backticks in plain text. */
function withKeys(text: string, shown: string): string {
  return text.includes("`") ? text.replace(/`([^`]+)`/gu, shown) : text;
}

function attribute(key: string, value: string | number | undefined): string {
  if (value === undefined) return "";
  return ` ${key}="${typeof value === "number" ? rounded(value) : withKeys(escaped(value), quoted)}"`;
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

/** Few texts contain any of them, and a test costs less than a replacement. */
const special = /[&<>"']/;

function escaped(text: string): string {
  return special.test(text) ? text.replace(/[&<>"']/gu, (letter) => entities[letter] ?? letter) : text;
}
