// The parameters of each distribution, the conditions between them, and the resulting description.
import type { Distribution } from "#engine/distributions/distribution.ts";
import type { Fault } from "#foundation/fault.ts";

interface DistributionShape {
  readonly meaning: string;
  /** An example of its values in YAML. */
  readonly example: string;
  readonly parameters: readonly string[];
  readonly check: (values: readonly number[], expected: string) => Fault | undefined;
  readonly build: (values: readonly number[]) => Distribution;
}

export type DistributionKind = "uniform" | "triangular" | "normal" | "lognormal" | "gamma" | "exponential" | "weibull";

export const distributionShapes: Readonly<Record<DistributionKind, DistributionShape>> = {
  uniform: {
    meaning: "Any value from min to max is as likely as any other.",
    example: "[7.0 s, 8.0 s]",
    parameters: ["min", "max"],
    check: rising,
    build: ([min = 0, max = 0]) => (min === max ? { kind: "fixed", value: min } : { kind: "uniform", min, max }),
  },
  triangular: {
    meaning:
      "Least, most likely and largest value. Three figures from a stopwatch are enough, so it is the usual first choice.",
    example: "[7.0 s, 7.5 s, 9.0 s]",
    parameters: ["min", "mode", "max"],
    check: rising,
    build: ([min = 0, mode = 0, max = 0]) =>
      min === max ? { kind: "fixed", value: min } : { kind: "triangular", min, mode, max },
  },
  normal: {
    meaning: "Bell curve by mean and standard deviation, never below 0; for small symmetric variation of a machine.",
    example: "[7.5 s, 0.3 s]",
    parameters: ["mean", "sd"],
    check: (values, expected) => spread(values, expected, Infinity, 0),
    build: ([mean = 0, sd = 0]) => ({ kind: "normal", mean, sd }),
  },
  lognormal: {
    meaning: "Skewed to long values, by mean and standard deviation of the time itself; for manual work and repairs.",
    example: "[12 s, 4 s]",
    parameters: ["mean", "sd"],
    check: (values, expected) => spread(values, expected, 10),
    build: ([mean = 0, sd = 0]) => ({ kind: "lognormal", mean, sd }),
  },
  gamma: {
    meaning: "Skewed to long values, by mean and standard deviation; for sums of small delays.",
    example: "[12 s, 4 s]",
    parameters: ["mean", "sd"],
    // A shape (mean/sd)² below 0.5 has most of its mass at zero: no step of a machine varies so.
    check: (values, expected) => spread(values, expected, Math.sqrt(2)),
    build: ([mean = 0, sd = 0]) => ({ kind: "gamma", mean, sd }),
  },
  exponential: {
    meaning: "By its mean; for the time from one random stop to the next.",
    example: "40 h",
    parameters: ["mean"],
    check: ([mean = 0], expected) => positive("mean", mean, expected),
    build: ([mean = 0]) => ({ kind: "exponential", mean }),
  },
  weibull: {
    meaning: "By scale and shape, for the time to a failure: a shape below 1 fails early, above 1 it wears out.",
    example: "[40 h, 1.5]",
    parameters: ["scale", "shape"],
    check: ([scale = 0], expected) => positive("scale", scale, expected),
    build: ([scale = 0, shape = 0]) => ({ kind: "weibull", scale, shape }),
  },
};

/** The one that has no shape of its own. */
export const empirical = {
  meaning: "Measured values, each as likely as the others: a list, or a column of a CSV file beside the scenario.",
  parameters: ["value, value, …"],
  example: "[7.2 s, 7.5 s, 7.4 s, 8.1 s]",
} as const;

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
  // The tolerance accepts a ratio at the limit in spite of rounding.
  if (sd <= mean * most * (1 + 1e-12) || most === Infinity) return undefined;
  const message = `The standard deviation is more than ${Number(most.toPrecision(3))} times the mean.`;
  return {
    code: "distribution-spread",
    message,
    expected,
    remedy: "Check both values; mean comes first, then the standard deviation.",
  };
}
