// Holds the mutants of a text to those that a reader finds.
import { describe, expect, it } from "vitest";
import { mutantsOf, mutated } from "./mutants.mjs";

const changes = (text: string): readonly string[] => mutantsOf(text).map((mutant) => mutated(text, mutant));

describe("the mutants of a text", () => {
  it("change one operator, number, condition or call each", () => {
    expect(changes("f(() => a < 2);")).toEqual([";", "f(() => a <= 2);", "f(() => a < 3);", "f(() => a < 0);"]);
    expect(changes("const x = a && !b;")).toEqual(["const x = a || !b;", "const x = a && b;"]);
    expect(changes("const x = a ?? b;")).toEqual(["const x = b;"]);
    expect(changes("const x = Math.min(a, b);")).toEqual(["const x = Math.max(a, b);"]);
    expect(changes("if (a) b();")).toEqual(["if (true) b();", "if (false) b();", "if (a) ;"]);
    expect(changes("let a = false; a += b;")).toEqual([
      "let a = true; a += b;",
      "let a = false; ;",
      "let a = false; a -= b;",
    ]);
  });

  it("leave types, texts, comments, imports and failures of the program as they are", () => {
    const texts = [
      "const a: 1 | 2 = b; // 1 < 2",
      'const a = "1 + 2" + b;',
      'import { a } from "b";',
      "throw new Error(a + b);",
      "const a: Record<string, number> = { 1: b };",
    ];
    expect(texts.flatMap(changes)).toEqual([]);
  });

  it("know the innermost function around them", () => {
    const text = "const a = 1;\nfunction f() { return (b) => b + c; }";
    expect(mutantsOf(text).map(({ inside, line }) => [inside, line])).toEqual([
      [-1, 1],
      [-1, 1],
      [1, 2],
    ]);
  });
});
