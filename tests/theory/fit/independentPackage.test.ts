// Distribution functions, test statistics and estimates against an independent package.

// All values are from SciPy 1.17.1 [C]: cdf and logpdf, goodness_of_fit(statistic="ad") and kstest for known parameters, fit.
import { describe, expect, it } from "vitest";
import { families } from "#analysis/fit/families.ts";
import { goodness } from "#analysis/fit/goodness.ts";
import { triangularBySpacings } from "#analysis/fit/triangularSpacings.ts";

const times = Float64Array.of(
  6.83,
  7.02,
  7.11,
  7.19,
  7.24,
  7.31,
  7.36,
  7.42,
  7.44,
  7.51,
  7.53,
  7.58,
  7.66,
  7.7,
  7.79,
  7.86,
  7.98,
  8.09,
  8.31,
  8.62,
);
const places = [6.6, 7.1, 7.3, 7.9, 8.8];

interface Reference {
  readonly kind: string;
  readonly parameters: readonly number[];
  readonly probability: readonly number[];
  readonly logDensity: readonly number[];
  readonly andersonDarling: number;
  readonly kolmogorovSmirnov: number;
}

const references: readonly Reference[] = [
  {
    kind: "normal",
    parameters: [7.5, 0.45],
    probability: [
      0.022750131948179146, 0.18703139874544106, 0.3283606432818851, 0.8129686012545589, 0.9980669717300181,
    ],
    logDensity: [
      -2.1204308369869027, -0.5154925653819634, -0.2191962690856667, -0.5154925653819634, -4.2932703431597465,
    ],
    andersonDarling: 0.33965712371632506,
    kolmogorovSmirnov: 0.0954465960690167,
  },
  {
    kind: "lognormal",
    parameters: [7.5, 0.45],
    probability: [
      0.017754809750141168, 0.18826206644251886, 0.33691046497332816, 0.815073107453586, 0.9964965198831109,
    ],
    logDensity: [
      -2.201949057942135, -0.4557338332574359, -0.18108605242304132, -0.5735697656949865, -3.9149728357051394,
    ],
    andersonDarling: 0.341123755565544,
    kolmogorovSmirnov: 0.10009517576746232,
  },
  {
    kind: "gamma",
    parameters: [7.5, 0.45],
    probability: [
      0.01941873464344518, 0.18804868088242768, 0.33417590463646113, 0.8141985318149075, 0.9970813284268721,
    ],
    logDensity: [
      -2.1688339958708767, -0.47561792304615125, -0.19425930926164625, -0.5542445765164885, -4.026310757642854,
    ],
    andersonDarling: 0.3391419297993892,
    kolmogorovSmirnov: 0.09871329417194605,
  },
  {
    kind: "weibull",
    parameters: [7.8, 14],
    probability: [
      0.09194236712053781, 0.23516664276877955, 0.32668683541115395, 0.6973684541331455, 0.9955414737272856,
    ],
    logDensity: [
      -1.6832169347623662, -0.9055400520773638, -0.6718531474004312, -0.44469830264041055, -3.2598395625100003,
    ],
    andersonDarling: 0.8219792433447033,
    kolmogorovSmirnov: 0.15448686884782198,
  },
  {
    kind: "exponential",
    parameters: [7.5],
    probability: [0.5852170883184187, 0.611967688850128, 0.6221784683448042, 0.651226768112253, 0.6906658928588649],
    logDensity: [-2.8949030205422646, -2.9615696872089314, -2.988236353875598, -3.068236353875598, -3.188236353875598],
    andersonDarling: 8.286690702378596,
    kolmogorovSmirnov: 0.5977440360191,
  },
  {
    kind: "triangular",
    parameters: [6.5, 7.3, 9],
    probability: [0.0049999999999999645, 0.1799999999999998, 0.32, 0.7152941176470592, 0.9905882352941177],
    logDensity: [
      -2.3025850929940495, -0.5108256237659912, -0.22314355131420982, -0.6584616225720559, -2.363209714810484,
    ],
    andersonDarling: 0.3731419563515246,
    kolmogorovSmirnov: 0.10578823529411752,
  },
  {
    kind: "uniform",
    parameters: [6.5, 9],
    probability: [
      0.039999999999999855, 0.23999999999999985, 0.31999999999999995, 0.5600000000000002, 0.9200000000000003,
    ],
    logDensity: [
      -0.9162907318741551, -0.9162907318741551, -0.9162907318741551, -0.9162907318741551, -0.9162907318741551,
    ],
    andersonDarling: 2.323872131472612,
    kolmogorovSmirnov: 0.2640000000000001,
  },
];

describe.each(references)("$kind $parameters", (reference) => {
  const family = families.find(({ kind }) => kind === reference.kind)!;
  const probability = family.probability(reference.parameters);
  const logDensity = family.logDensity(reference.parameters);

  it("has the functions of the package to 1e-9", () => {
    places.forEach((place, i) => {
      expect(Math.abs(probability(place) - reference.probability[i]!)).toBeLessThan(1e-9);
      expect(Math.abs(logDensity(place) - reference.logDensity[i]!)).toBeLessThan(1e-9);
    });
  });

  it("has the statistics of the package to 1e-9", () => {
    const { andersonDarling, kolmogorovSmirnov } = goodness(times, probability);
    expect(Math.abs(andersonDarling - reference.andersonDarling)).toBeLessThan(1e-9);
    expect(Math.abs(kolmogorovSmirnov - reference.kolmogorovSmirnov)).toBeLessThan(1e-9);
  });
});

describe("estimates", () => {
  const fitOf = (kind: string) => families.find((family) => family.kind === kind)!.fit(times)!;

  it("by maximum likelihood are those of the package to 1e-9", () => {
    const sigma = 0.05615615248763468;
    const mean = 7.565462993506366 * Math.exp((sigma * sigma) / 2);
    const expected = {
      normal: [7.5775, 0.4310669901535027],
      lognormal: [mean, mean * Math.sqrt(Math.expm1(sigma * sigma))],
      // The root of ln k − ψ(k) = ln mean − mean of the logarithms.
      gamma: [7.5775, 0.42716417497030845],
      exponential: [7.5775],
    };
    for (const [kind, parameters] of Object.entries(expected))
      fitOf(kind).forEach((value, i) => expect(Math.abs(value - parameters[i]!)).toBeLessThan(1e-9));
  });

  it("of Weibull are as likely as the optimizer of the package makes them", () => {
    const [scale, shape] = fitOf("weibull");
    expect(scale).toBeCloseTo(7.789752780746834, 3);
    expect(shape).toBeCloseTo(16.80475962893833, 2);
  });

  it("of a triangle by spacings are those of the package, which searches the whole range", () => {
    // fit(method="mse"), three seeds of differential evolution, equal to six digits. The search of a test is shorter.
    const [min, mode, max] = triangularBySpacings(times)!;
    expect(Math.abs(min! - 6.536818)).toBeLessThan(0.02);
    expect(Math.abs(mode! - 7.369194)).toBeLessThan(0.02);
    expect(Math.abs(max! - 8.979992)).toBeLessThan(0.02);
  });
});
