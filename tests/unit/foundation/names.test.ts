// Names are ordered by code point and mistyped words find the one that was meant.
import fc from "fast-check";
import { expect, it } from "vitest";
import { codePointOrder } from "#foundation/codePointOrder.ts";
import { didYouMean } from "#foundation/didYouMean.ts";

it("orders names as UTF-8 bytes do, which the Unicode Standard says is code-point order (chapter 2.5, from memory)", () => {
  const name = fc.string({ unit: "grapheme" });
  fc.assert(
    fc.property(name, name, (one, other) => {
      const bytes = Math.sign(Buffer.compare(Buffer.from(one), Buffer.from(other)));
      expect(Math.sign(codePointOrder(one, other))).toBe(bytes);
    }),
  );
});

it("puts a letter beyond the first plane last, where JavaScript's own comparison does not", () => {
  expect(["\u{1F600}", "\uFF5E"].toSorted(codePointOrder)).toEqual(["\uFF5E", "\u{1F600}"]);
});

it.each([
  ["cavitys", ["cavities", "cool"], "cavities"],
  ["Mean", ["mean", "max"], "mean"],
  ["shot_capacity", ["shotCapacity"], "shotCapacity"],
  ["wallpaper", ["wall", "weight"], undefined],
  ["x", ["close"], undefined],
])("%s is taken for %o: %s", (word, known, meant) => {
  expect(didYouMean(word, known)).toBe(meant);
});
