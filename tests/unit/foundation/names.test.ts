// The order of names by code point, and suggestions for mistyped words.
import fc from "fast-check";
import { expect, it } from "vitest";
import { codePointOrder } from "#foundation/codePointOrder.ts";
import { didYouMean } from "#foundation/didYouMean.ts";

// The Unicode Standard, section 2.5: the binary order of UTF-8 is the code-point order [M].
it("orders names by code point, as their UTF-8 bytes", () => {
  const name = fc.string({ unit: "grapheme" });
  fc.assert(
    fc.property(name, name, (one, other) => {
      const bytes = Math.sign(Buffer.compare(Buffer.from(one), Buffer.from(other)));
      expect(Math.sign(codePointOrder(one, other))).toBe(bytes);
    }),
  );
});

it("orders a character beyond the first plane last, unlike JavaScript's comparison", () => {
  expect(["\u{1F600}", "\uFF5E"].toSorted(codePointOrder)).toEqual(["\uFF5E", "\u{1F600}"]);
});

it.each([
  ["cavitys", ["cavities", "cool"], "cavities"],
  ["Mean", ["mean", "max"], "mean"],
  ["shot_capacity", ["shotCapacity"], "shotCapacity"],
  ["wallpaper", ["wall", "weight"], undefined],
  ["x", ["close"], undefined],
])("suggests for %s, of %o: %s", (word, known, meant) => {
  expect(didYouMean(word, known)).toBe(meant);
});
