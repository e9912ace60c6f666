// A fitted distribution as a scenario takes it, and as short words.
import type { Distribution } from "#engine/distributions/distribution.ts";
import type { Fit } from "#analysis/fit/logFit.ts";
import type { Issue } from "#foundation/issue.ts";
import { formatQuantity } from "#foundation/formatQuantity.ts";

/** More digits than the intervals support, so that rounding never matters. */
const digits = 4;

/** YAML in flow style: `{ normal: [7.5 s, 0.3 s] }`. */
export function distributionText(distribution: Distribution): string {
  const time = (seconds: number): string => timeText(seconds);
  switch (distribution.kind) {
    case "fixed":
      return time(distribution.value);
    case "empirical":
      return `{ empirical: [${distribution.values.map(time).join(", ")}] }`;
    case "exponential":
      return `{ exponential: ${time(distribution.mean)} }`;
    case "weibull":
      return `{ weibull: [${time(distribution.scale)}, ${Number(distribution.shape.toPrecision(digits))}] }`;
    case "uniform":
      return `{ uniform: [${times(distribution.min, distribution.max)}] }`;
    case "triangular":
      return `{ triangular: [${times(distribution.min, distribution.mode, distribution.max)}] }`;
    case "normal":
    case "lognormal":
    case "gamma":
      return `{ ${distribution.kind}: [${times(distribution.mean, distribution.sd)}] }`;
  }
}

function times(...seconds: readonly number[]): string {
  return seconds.map(timeText).join(", ");
}

function timeText(seconds: number): string {
  return formatQuantity(seconds, "time", { digits });
}

/** For a line of the terminal, without the braces; of measured values only their number. */
export function shortText(distribution: Distribution): string {
  if (distribution.kind === "empirical") return `empirical, ${distribution.values.length} values`;
  if (distribution.kind === "fixed") return `constant ${timeText(distribution.value)}`;
  return distributionText(distribution)
    .replace(/^\{ (\w+): /u, "$1 ")
    .replace(/ \}$/u, "");
}

/** A warning of a page, with the line of the log. */
export function warningLine({ message, place, value }: Issue): string {
  const found = value === undefined ? "" : `: ${value}`;
  return place === undefined ? `${message}${found}` : `${message} First in line ${place.line}${found}.`;
}

/** Mean of the values; the standard deviation stands beside it in fit.csv. */
export function meanText({ summary: { mean } }: Fit): string {
  return timeText(mean);
}

/** "remove", "screw stopped, repair", "screw stopped, time between". */
export function fitName({ step, kind }: Pick<Fit, "step" | "kind">): string {
  return kind === "step" ? step : `${step}, ${kind === "repair" ? "repair" : "time between"}`;
}
