// The gamma family with a small spread (shapes of 500 and more) against values of 40 digits.

// All values are from mpmath 1.3.0 [C]: the density with its own logarithm of the gamma function, probabilities by quadrature of the
// density, the root of ln k - digamma(k) = ln mean - mean of the logarithms.
import { describe, expect, it } from "vitest";
import { gamma } from "#analysis/fit/gammaFamily.ts";
import { goodness } from "#analysis/fit/goodness.ts";
import { logLikelihood } from "#analysis/fit/family.ts";
import { gammaQuantile } from "#engine/distributions/gammaQuantile.ts";

const times = [
  6.83, 7.02, 7.11, 7.19, 7.24, 7.31, 7.36, 7.42, 7.44, 7.51, 7.53, 7.58, 7.66, 7.7, 7.79, 7.86, 7.98, 8.09, 8.31, 8.62,
];

/** The times with another spread, to the microsecond. */
const sampleOf = ([mean = 0, sd = 0]: readonly number[]): Float64Array =>
  Float64Array.from(times, (time) => Number((mean + ((time - 7.5775) * sd) / 0.45).toFixed(6)));

const references = [
  {
    parameters: [7.5, 0.3354],
    places: [6.1584, 6.8292, 7.3323, 7.76832, 8.3385, 8.8416],
    probability: [
      1.0601176970596229e-5, 0.02028374741104289, 0.31247724236757807, 0.7897394294218482, 0.992393053673766,
      0.9999271688348961,
    ],
    logDensity: [
      -8.733149737157142, -1.8608497142405236, 0.06904486373047758, -0.1743915469426263, -2.842669243965714,
      -7.149256200450049,
    ],
    andersonDarling: 0.1774932502031998,
    kolmogorovSmirnov: 0.09183774090156283,
    fit: [7.5, 0.3189820103146806],
  },
  {
    parameters: [7.5, 0.3],
    places: [6.3, 6.9, 7.35, 7.74, 8.25, 8.7],
    probability: [
      1.2093927676974773e-5, 0.0205487686196002, 0.31206108782633646, 0.7895674063028912, 0.9925425666303489,
      0.999932667217414,
    ],
    logDensity: [
      -8.511612640542014, -1.7452230401685505, 0.17841157166717136, -0.059930817153194454, -2.74154686430198,
      -7.101015868398159,
    ],
    andersonDarling: 0.18032950701324327,
    kolmogorovSmirnov: 0.09246448645514703,
    fit: [7.5, 0.2855023002480079],
  },
  {
    parameters: [7.5, 0.15],
    places: [6.9, 7.2, 7.425, 7.62, 7.875, 8.1],
    probability: [
      2.019590530427375e-5, 0.02165968786536339, 0.31029859431916823, 0.7888480420856594, 0.9931712418561863,
      0.999952823644053,
    ],
    logDensity: [
      -7.392492620340533, -1.0360161877695133, 0.862358820447951, 0.6456476599171355, -2.0952316222413714,
      -6.696210082467254,
    ],
    andersonDarling: 0.192810266186719,
    kolmogorovSmirnov: 0.09512512767984055,
    fit: [7.5, 0.1431875009442102],
  },
  {
    parameters: [7.5, 0.03],
    places: [7.38, 7.44, 7.485, 7.524, 7.575, 7.62],
    probability: [
      2.9074430963610003e-5, 0.02253373748095538, 0.3088896333569421, 0.7882839841967476, 0.9936673989977716,
      0.999965570642048,
    ],
    logDensity: [
      -5.4826232050149395, 0.5849191234630761, 2.4644531163853194, 2.2651041723352723, -0.5266539770660293,
      -5.343933050240001,
    ],
    andersonDarling: 0.20334677123362097,
    kolmogorovSmirnov: 0.09724733737236381,
    fit: [7.5, 0.028716636504269626],
  },
  {
    parameters: [7.5, 0.0025],
    places: [7.49, 7.495, 7.49875, 7.502, 7.50625, 7.51],
    probability: [
      3.144875106389258e-5, 0.022732131960605483, 0.30856687770697394, 0.7881561913819578, 0.9937801081605565,
      0.9999681051471893,
    ],
    logDensity: [
      -2.9332580021583166, 3.072303560061337, 4.9476787945759675, 4.752316251040227, 1.9484280451050575,
      -2.9217024330126207,
    ],
    andersonDarling: 0.20581897770956975,
    kolmogorovSmirnov: 0.09772161009216511,
    fit: [7.5, 0.0023946451879231015],
  },
];

describe.each(references)("gamma $parameters", (reference) => {
  const { parameters, places } = reference;
  const probability = gamma.probability(parameters);
  const sample = sampleOf(parameters);

  it("has these probabilities to 1e-11 and this density to 1e-9", () => {
    const density = gamma.logDensity(parameters);
    places.forEach((place, i) => {
      expect(Math.abs(probability(place) - reference.probability[i]!)).toBeLessThan(1e-11);
      expect(Math.abs(density(place) - reference.logDensity[i]!)).toBeLessThan(1e-9);
    });
    const all = reference.logDensity.reduce((sum, value) => sum + value, 0);
    expect(Math.abs(logLikelihood(gamma, parameters, Float64Array.from(places)) - all)).toBeLessThan(1e-9);
  });

  it("has these statistics to 1e-9", () => {
    const { andersonDarling, kolmogorovSmirnov } = goodness(sample, probability);
    expect(Math.abs(andersonDarling - reference.andersonDarling)).toBeLessThan(1e-9);
    expect(Math.abs(kolmogorovSmirnov - reference.kolmogorovSmirnov)).toBeLessThan(1e-9);
  });

  it("has these parameters by maximum likelihood to 1e-10 of each", () => {
    gamma.fit(sample)!.forEach((value, i) => expect(Math.abs(value / reference.fit[i]! - 1)).toBeLessThan(1e-10));
  });

  it("is its own inverse, and 0 below 0", () => {
    const [mean = 0, sd = 0] = parameters;
    const shape = (mean / sd) * (mean / sd);
    for (const p of [1e-6, 0.02, 0.5, 0.9, 0.9999])
      expect(Math.abs(probability((gammaQuantile(p, shape) / shape) * mean) - p)).toBeLessThan(1e-9);
    expect([probability(0), probability(-1), probability(10 * mean)]).toEqual([0, 0, 1]);
  });
});

describe("a spread of a few parts in a million", () => {
  it("is found from many values, whose mean is rounded", () => {
    // Pairs at equal distances from the mean: sd² = mean of the squares, but for 1e-12 of it.
    const count = 20_000;
    const values = Float64Array.from({ length: count }, (_, i) => 12 + (i - (count - 1) / 2) * 4e-9).toSorted();
    const sd = 4e-9 * Math.sqrt((count * count - 1) / 12);
    expect(Math.abs(gamma.fit(values)![1]! / sd - 1)).toBeLessThan(1e-8);
  });
});

describe("both sides of the shape where the formula changes", () => {
  it("have the same probabilities and densities", () => {
    for (const limit of [100, 500]) {
      const [below, above] = [limit * (1 - 1e-12), limit * (1 + 1e-12)].map((shape) => [10, 10 / Math.sqrt(shape)]);
      for (const value of [8, 9.9, 10.1, 12]) {
        expect(gamma.probability(below!)(value)).toBeCloseTo(gamma.probability(above!)(value), 10);
        expect(gamma.logDensity(below!)(value)).toBeCloseTo(gamma.logDensity(above!)(value), 9);
      }
    }
  });
});
