// What each distribution takes, what its values must satisfy among each other, and the description that comes of them.
import type { Distribution } from "#engine/distributions/distribution.ts";
import type { Fault } from "#foundation/fault.ts";

interface DistributionShape {
  readonly parameters: readonly string[];
  readonly check: (values: readonly number[], expected: string) => Fault | undefined;
  readonly build: (values: readonly number[]) => Distribution;
}

export type DistributionKind = "uniform" | "triangular" | "normal" | "lognormal" | "gamma" | "exponential" | "weibull";

export const distributionShapes: Readonly<Record<DistributionKind, DistributionShape>> = {
  uniform: {
    parameters: ["min", "max"],
    check: rising,
    build: ([min = 0, max = 0]) => (min === max ? { kind: "fixed", value: min } : { kind: "uniform", min, max }),
  },
  triangular: {
    parameters: ["min", "mode", "max"],
    check: rising,
    build: ([min = 0, mode = 0, max = 0]) =>
      min === max ? { kind: "fixed", value: min } : { kind: "triangular", min, mode, max },
  },
  normal: {
    parameters: ["mean", "sd"],
    check: (values, expected) => spread(values, expected, Infinity, 0),
    build: ([mean = 0, sd = 0]) => ({ kind: "normal", mean, sd }),
  },
  lognormal: {
    parameters: ["mean", "sd"],
    check: (values, expected) => spread(values, expected, 10),
    build: ([mean = 0, sd = 0]) => ({ kind: "lognormal", mean, sd }),
  },
  gamma: {
    parameters: ["mean", "sd"],
    // A shape (mean/sd)² below 0.5 has most of its mass at zero: no step of a machine varies so.
    check: (values, expected) => spread(values, expected, Math.sqrt(2)),
    build: ([mean = 0, sd = 0]) => ({ kind: "gamma", mean, sd }),
  },
  exponential: {
    parameters: ["mean"],
    check: ([mean = 0], expected) => positive("mean", mean, expected),
    build: ([mean = 0]) => ({ kind: "exponential", mean }),
  },
  weibull: {
    parameters: ["scale", "shape"],
    check: ([scale = 0], expected) => positive("scale", scale, expected),
    build: ([scale = 0, shape = 0]) => ({ kind: "weibull", scale, shape }),
  },
};

function rising(values: readonly number[], expected: string): Fault | undefined {
  if (values.every((value, place) => place === 0 || value >= (values[place - 1] ?? value))) return undefined;
  return {
    code: "distribution-order",
    message: "The values do not rise.",
    expected,
    remedy: "Put the smallest first.",
  };
}

function positive(parameter: string, value: number, expected: string): Fault | undefined {
  if (value > 0) return undefined;
  return {
    code: "distribution-spread",
    message: `The ${parameter} is zero.`,
    expected,
    remedy: "Write more than 0, or a plain quantity.",
  };
}

/** A spread above zero and up to so many times the mean. */
function spread([mean = 0, sd = 0]: readonly number[], expected: string, most: number, least = -1): Fault | undefined {
  if (sd === 0) {
    const remedy = "Write the mean alone, as a plain quantity, if it does not vary.";
    return { code: "distribution-spread", message: "The standard deviation is zero.", expected, remedy };
  }
  if (mean === 0 && least < 0) return positive("mean", mean, expected);
  // The hair's breadth lets through a ratio that is at the limit but for rounding.
  if (sd <= mean * most * (1 + 1e-12) || most === Infinity) return undefined;
  const message = `The standard deviation is more than ${Number(most.toPrecision(3))} times the mean.`;
  return {
    code: "distribution-spread",
    message,
    expected,
    remedy: "Check both values; mean comes first, then the standard deviation.",
  };
}
