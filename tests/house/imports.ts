// Finds what a source text imports and re-exports, from its tokens.
import { codeTokensOf, type Token } from "./tokens.ts";

export interface Import {
  readonly target: string;
  readonly line: number;
  /** `export … from` instead of `import … from`. */
  readonly reexport: boolean;
}

const isText = (token: Token | undefined, text: string) => token?.kind !== "string" && token?.text === text;

/** `import "x"`, `import … from "x"`, `export … from "x"`, `import("x")`. */
function startsImport(tokens: readonly Token[], index: number): boolean {
  const [before, beforeThat] = [tokens[index - 1], tokens[index - 2]];
  if (isText(before, "import") || isText(before, "from")) return true;
  return isText(before, "(") && isText(beforeThat, "import");
}

/** True if the statement of this `from` begins with `export`. */
function opensWithExport(tokens: readonly Token[], index: number): boolean {
  const opening = tokens.slice(0, index).findLast((token) => isText(token, "import") || isText(token, "export"));
  return isText(opening, "export");
}

export function importsOf(text: string): readonly Import[] {
  const tokens = codeTokensOf(text);
  return tokens.flatMap((token, index) => {
    if (token.kind !== "string" || !startsImport(tokens, index)) return [];
    return [{ target: token.text.slice(1, -1), line: token.line, reexport: opensWithExport(tokens, index) }];
  });
}
