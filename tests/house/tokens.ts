// Splits TypeScript into tokens, so that the house tests distinguish code from comments and strings.

export interface Token {
  readonly kind: "word" | "number" | "string" | "pattern" | "comment" | "mark";
  readonly text: string;
  readonly line: number;
}

const lexemes: readonly (readonly [Token["kind"], RegExp])[] = [
  ["comment", /\/\/[^\n]*|\/\*[^]*?\*\/|#![^\n]*/y],
  ["string", /"(?:[^"\\\n]|\\[^])*"|'(?:[^'\\\n]|\\[^])*'/y],
  ["number", /\.?\d(?:[eE][+-]|[\w.])*/y],
  ["word", /#?[\p{ID_Start}$_][\p{ID_Continue}$]*/uy],
  ["mark", /\*\*=?|=>|\.{3}|[^\s]/y],
];
const patternLexeme = /\/(?:[^/\\[\n]|\\.|\[(?:[^\]\\\n]|\\.)*\])+\/[a-z]*/y;
const templatePiece = /(?:[^`\\$]|\\[^]|\$(?!\{))*/y;
const wordsBeforePatterns = new Set([
  "return",
  "typeof",
  "case",
  "in",
  "of",
  "delete",
  "void",
  "throw",
  "else",
  "await",
]);

/** A slash after a value divides; anywhere else it opens a pattern. */
function opensPattern(before: Token | undefined): boolean {
  if (before === undefined) return true;
  if (before.kind === "word") return wordsBeforePatterns.has(before.text);
  return before.kind === "mark" && ![")", "]", "}", "`"].includes(before.text);
}

class Cutter {
  readonly tokens: Token[] = [];
  /** For each open template the number of braces open inside its current `${`. */
  readonly #openBraces: number[] = [];
  readonly #text: string;
  #at = 0;
  #line = 1;

  constructor(text: string) {
    this.#text = text;
  }

  cut(): Token[] {
    for (this.#skipSpace(); this.#at < this.#text.length; this.#skipSpace()) this.#step();
    return this.tokens;
  }

  #step(): void {
    const character = this.#text[this.#at];
    if (character === "`") return this.#template();
    if (character === "}" && this.#openBraces.at(-1) === 0) return this.#closeHole();
    if (this.#openBraces.length > 0 && (character === "{" || character === "}")) this.#countBrace(character);
    const before = this.tokens.findLast((token) => token.kind !== "comment");
    const found = this.#match(lexemes[0]?.[1]) === undefined && character === "/" && opensPattern(before);
    if (found && this.#match(patternLexeme) !== undefined) return this.#take("pattern", patternLexeme);
    const lexeme = lexemes.find(([, pattern]) => this.#match(pattern) !== undefined);
    if (lexeme === undefined) throw new Error(`no token at line ${this.#line}`);
    this.#take(...lexeme);
  }

  #countBrace(character: string): void {
    this.#openBraces.push((this.#openBraces.pop() ?? 0) + (character === "{" ? 1 : -1));
  }

  #template(): void {
    this.#take("mark", /`/y);
    this.#templateText();
  }

  #closeHole(): void {
    this.#openBraces.pop();
    this.#take("mark", /\}/y);
    this.#templateText();
  }

  #templateText(): void {
    this.#take("string", templatePiece);
    if (this.#text[this.#at] === "`") return this.#take("mark", /`/y);
    this.#take("mark", /\$\{/y);
    this.#openBraces.push(0);
  }

  #match(pattern: RegExp | undefined): string | undefined {
    if (pattern === undefined) return undefined;
    pattern.lastIndex = this.#at;
    return pattern.exec(this.#text)?.[0];
  }

  #take(kind: Token["kind"], pattern: RegExp): void {
    const text = this.#match(pattern) ?? "";
    if (text !== "") this.tokens.push({ kind, text, line: this.#line });
    this.#advance(text);
  }

  #skipSpace(): void {
    this.#advance(this.#match(/\s*/y) ?? "");
  }

  #advance(text: string): void {
    this.#at += text.length;
    this.#line += text.split("\n").length - 1;
  }
}

/** All tokens of a source text, comments included. */
export function tokensOf(text: string): readonly Token[] {
  return new Cutter(text).cut();
}

/** All tokens except comments. */
export function codeTokensOf(text: string): readonly Token[] {
  return tokensOf(text).filter((token) => token.kind !== "comment");
}
