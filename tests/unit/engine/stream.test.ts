// Streams depend on their names only.
import fc from "fast-check";
import alea from "seedrandom/lib/alea.js";
import { expect, test } from "vitest";
import { openStream } from "../../support/draws/openStream.ts";

const take = (count: number, next: () => number) => Array.from({ length: count }, () => next());

test("a stream is alea, seeded with its names", () => {
  expect(take(3, openStream("1", 4, "left", "cool"))).toEqual(take(3, alea("1/4/left/cool")));
});

test("a stream does not depend on the order in which streams are opened and drawn from", () => {
  const alone = take(50, openStream("1", 0, "left", "cool"));
  const first = openStream("1", 0, "right", "cool");
  const second = openStream("1", 0, "left", "cool");
  const mixed = alone.map(() => {
    first();
    return second();
  });
  expect(mixed).toEqual(alone);
});

test("different names open different streams", () => {
  const name = fc.oneof(fc.string(), fc.stringMatching(/^[/%2F5a]{0,6}$/));
  const names = fc.tuple(name, fc.nat(20), name, name);
  fc.assert(
    fc.property(names, names, (one, other) => {
      fc.pre(JSON.stringify(one) !== JSON.stringify(other));
      expect(take(3, openStream(...one))).not.toEqual(take(3, openStream(...other)));
    }),
    {
      examples: [
        [
          ["1", 0, "a/b", "c"],
          ["1", 0, "a", "b/c"],
        ],
        [
          ["1", 0, "a%2Fb", "c"],
          ["1", 0, "a/b", "c"],
        ],
      ],
    },
  );
});

test("draws are multiples of 2^-32 in [0, 1) and spread evenly over 16 parts", () => {
  const draws = take(160_000, openStream("evenly", 0, "left", "cool"));
  expect(draws.every((u) => u >= 0 && u < 1 && Number.isInteger(u * 2 ** 32))).toBe(true);
  const counts = Array.from({ length: 16 }, (_, part) => draws.filter((u) => Math.floor(u * 16) === part).length);
  const chiSquared = counts.reduce((sum, count) => sum + (count - 10_000) ** 2 / 10_000, 0);
  // 99.9 % quantile of chi-squared with 15 degrees of freedom: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4 [M+C].
  expect(chiSquared).toBeLessThan(37.697);
});
