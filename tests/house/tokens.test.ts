// Holds the tokenizer of the house tests to texts that a plain search misreads.
import { describe, expect, it } from "vitest";
import { codeTokensOf } from "./tokens.ts";

const kindsOf = (text: string) => codeTokensOf(text).map(({ kind, text: piece }) => `${kind} ${piece}`);

describe("the tokenizer", () => {
  it("distinguishes a pattern from a division", () => {
    expect(kindsOf("a / b")).toEqual(["word a", "mark /", "word b"]);
    expect(kindsOf("= /a[/]b/u")).toEqual(["mark =", "pattern /a[/]b/u"]);
  });

  it("finds the code inside a template and the text around it", () => {
    expect(kindsOf("`a${{ b: `c${d}` }.b}e`")).toEqual(
      ["mark `", "string a", "mark ${", "mark {", "word b", "mark :", "mark `", "string c", "mark ${", "word d"].concat(
        ["mark }", "mark `", "mark }", "mark .", "word b", "mark }", "string e", "mark `"],
      ),
    );
  });

  it("drops comments, including comments with quotes", () => {
    expect(kindsOf("a // it's\n/* \"b */ c")).toEqual(["word a", "word c"]);
  });

  it("counts lines through comments and templates", () => {
    expect(codeTokensOf("/*\n*/ `\n` a").at(-1)).toEqual({ kind: "word", text: "a", line: 3 });
  });
});
