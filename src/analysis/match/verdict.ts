// What a match means: whether the model agrees, and whether step times or logic are to blame where it does not.
import type { Agreement } from "#analysis/statistics/equivalence.ts";
import type { Comparison, LogMatch } from "./logMatch.ts";

/**
 * By the drawn and the trace-driven run. `times`: the log's own step times mend the model. `logic`: they do not, so that order of
 * serving, operators, waits or stops are wrong. `hidden`: the output agrees, but not with the log's own step times.
 */
type Blame = "none" | "times" | "logic" | "hidden" | "unclear";

export interface Verdict {
  readonly agreement: Agreement;
  readonly blame: Blame;
  /** The measures that decide, the farthest first. */
  readonly decisive: readonly Comparison[];
  /** Steps whose mean times differ, the most seconds first. */
  readonly steps: readonly Comparison[];
  /** Times and waits in which the trace-driven run, or else the model, differs most. */
  readonly waits: readonly Comparison[];
  /** Hours of log after which the intervals would be narrow enough; undefined where none would be, or none are needed. */
  readonly hoursNeeded: number | undefined;
}

/** Longer logs are not worth a wish. */
const mostHours = 2000;
const shownMost = 3;
/** A share of time below this difference explains nothing. */
const leastShare = 0.005;

export function verdictOf(match: LogMatch): Verdict {
  const decisive = match.comparisons
    .filter(({ measure }) => measure === "throughput" || measure === "cycle")
    .toSorted((one, other) => distance(other) - distance(one));
  const agreement = jointly(decisive.map(({ result }) => result?.agreement ?? "undecided"));
  const known = match.steps.filter(({ isTraced }) => isTraced).length;
  // With few steps of the log the trace-driven run is mostly the drawn one.
  const traced = 2 * known < match.steps.length ? undefined : match.traced?.agreement;
  return {
    agreement,
    blame: blameOf(agreement, traced),
    decisive,
    steps: match.comparisons
      .filter(({ measure, result }) => measure === "step" && result?.agreement === "differs")
      .toSorted((one, other) => secondsApart(other) - secondsApart(one))
      .slice(0, shownMost),
    waits: match.comparisons
      .filter((each) => (each.measure === "wait" || each.measure === "time") && shareApart(each) >= leastShare)
      .toSorted((one, other) => shareApart(other) - shareApart(one))
      .slice(0, shownMost),
    hoursNeeded: agreement === "undecided" ? hoursNeeded(decisive, match) : undefined,
  };
}

/** All must agree; one that differs is enough. */
function jointly(found: readonly Agreement[]): Agreement {
  if (found.includes("differs")) return "differs";
  return found.every((each) => each === "agrees") ? "agrees" : "undecided";
}

function blameOf(agreement: Agreement, traced: Agreement | undefined): Blame {
  if (traced === undefined || (traced === "undecided" && agreement !== "agrees")) return "unclear";
  if (agreement === "agrees") return traced === "differs" ? "hidden" : traced === "agrees" ? "none" : "unclear";
  if (agreement === "undecided") return traced === "differs" ? "logic" : "unclear";
  return traced === "differs" ? "logic" : "times";
}

const distance = ({ result }: Comparison): number => Math.abs(result?.difference ?? 0);

function secondsApart({ log, model }: Comparison): number {
  return Math.abs((model?.mean ?? 0) - (log?.mean ?? 0));
}

export function shareApart(each: Comparison): number {
  return Math.abs(shareLess(each));
}

/** Log less model; against the trace-driven run where there is one. */
export function shareLess({ log, traced, tracedLog, model }: Comparison): number {
  const [own, other] = traced && tracedLog ? [traced, tracedLog] : [model, log];
  return own && other ? other.mean - own.mean : 0;
}

function hoursNeeded(decisive: readonly Comparison[], { hours, margin }: LogMatch): number | undefined {
  const needs = decisive.map(({ result }) => {
    if (!result || result.agreement !== "undecided") return 0;
    const room = Math.abs(Math.abs(result.difference) - margin);
    const ratio = (result.high - result.low) / 2 / room;
    return hours * ratio * ratio;
  });
  const most = Math.max(...needs);
  return most > 0 && most <= mostHours ? Math.max(most, hours) : undefined;
}
