// Reduces every continuous distribution to location + scale × a standard form, which has at most a shape.
import exp from "@stdlib/math-base-special-exp";
import ln from "@stdlib/math-base-special-ln";
import pow from "@stdlib/math-base-special-pow";
import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import { invariant } from "#foundation/invariant.ts";
import type { Distribution } from "./distribution.ts";
import { gammaQuantile } from "./gammaQuantile.ts";

type ContinuousDistribution = Exclude<Distribution, { readonly kind: "empirical" }>;

/** The standard form's name and shape; 0 where a form has no shape. */
export interface StandardForm {
  readonly kind: "uniform" | "triangular" | "normal" | "lognormal" | "gamma" | "exponential" | "weibull";
  readonly shape: number;
}

/** A value of the distribution is location + scale × a value of the form; nothing is clamped yet. */
export interface StandardizedDistribution {
  readonly form: StandardForm;
  readonly location: number;
  readonly scale: number;
}

export function standardizedDistribution(distribution: ContinuousDistribution): StandardizedDistribution {
  switch (distribution.kind) {
    case "fixed":
      return constant(distribution.value);
    case "uniform":
      return checked("uniform", 0, distribution.min, distribution.max - distribution.min);
    case "triangular":
      if (distribution.min === distribution.max) return constant(distribution.min);
      return checked(
        "triangular",
        (distribution.mode - distribution.min) / (distribution.max - distribution.min),
        distribution.min,
        distribution.max - distribution.min,
      );
    case "normal":
      return checked("normal", 0, distribution.mean, distribution.sd);
    case "lognormal":
      if (distribution.sd === 0 || distribution.mean === 0) return constant(distribution.mean);
      return checked("lognormal", logarithmSpread(distribution.sd / distribution.mean), 0, distribution.mean);
    case "gamma":
      if (distribution.sd === 0 || distribution.mean === 0) return constant(distribution.mean);
      return checked(
        "gamma",
        (distribution.mean / distribution.sd) * (distribution.mean / distribution.sd),
        0,
        distribution.mean,
      );
    case "exponential":
      return checked("exponential", 0, 0, distribution.mean);
    case "weibull":
      return checked("weibull", distribution.shape, 0, distribution.scale);
  }
}

/**
 * The form's value that is not exceeded with probability p. Lognormal and gamma forms have mean 1, the normal form has
 * mean 0 and standard deviation 1, the exponential and Weibull forms scale 1, uniform and triangular lie in [0, 1].
 */
export function standardQuantile({ kind, shape }: StandardForm, p: number): number {
  switch (kind) {
    case "uniform":
      return p;
    case "triangular":
      return p <= shape ? Math.sqrt(p * shape) : 1 - Math.sqrt((1 - p) * (1 - shape));
    case "normal":
      return normalQuantile(p, 0, 1);
    case "lognormal":
      return exp(shape * normalQuantile(p, 0, 1) - (shape * shape) / 2);
    case "gamma":
      return gammaQuantile(p, shape) / shape;
    case "exponential":
      return -ln(1 - p);
    case "weibull":
      return pow(-ln(1 - p), 1 / shape);
  }
}

/** Standard deviation of the logarithm of a lognormal quantity with this coefficient of variation. */
function logarithmSpread(variation: number): number {
  return Math.sqrt(ln(1 + variation * variation));
}

function constant(value: number): StandardizedDistribution {
  return checked("uniform", 0, value, 0);
}

function checked(kind: StandardForm["kind"], shape: number, location: number, scale: number): StandardizedDistribution {
  const sound = Number.isFinite(location) && Number.isFinite(shape) && scale >= 0 && scale < Infinity;
  invariant(sound, "a distribution has finite parameters and a spread that is not negative", {
    kind,
    shape,
    location,
    scale,
  });
  return { form: { kind, shape }, location, scale };
}
