// Numbers and sentences of a match.
import type { Comparison, LogMatch, MeasureKind } from "#analysis/match/logMatch.ts";
import { shareLess, type Verdict } from "#analysis/match/verdict.ts";
import { tFactorOf, type Equivalence, type Estimate } from "#analysis/statistics/equivalence.ts";
import { formatQuantity } from "#foundation/formatQuantity.ts";
import { grouped, plainNumber, shareWords, withInterval } from "#report/words/digits.ts";

const units: Readonly<Record<MeasureKind, string>> = {
  throughput: "shots/h",
  cycle: "s",
  step: "s",
  time: "share of time",
  wait: "share of time",
};

export const unitOf = (measure: MeasureKind): string => units[measure];

export const halfWidthOf = ({ error, freedom }: Estimate): number => (error === 0 ? 0 : tFactorOf(freedom) * error);

/** "580.1 ± 2.4"; shares of time in percent. */
export function estimateText(estimate: Estimate | undefined, measure: MeasureKind): string {
  if (estimate === undefined) return "-";
  const factor = units[measure] === "share of time" ? 100 : 1;
  return withInterval({ mean: estimate.mean, halfWidth: halfWidthOf(estimate) }, factor);
}

/** "+0.9 %". */
export function signed(share: number): string {
  const value = Number((share * 100).toFixed(Math.abs(share) < 0.1 ? 2 : 1));
  return `${value > 0 ? "+" : ""}${value} %`;
}

/** "+0.9 % (-0.3 to +2.1 %)". */
export function differenceText(result: Equivalence | undefined): string {
  if (result === undefined) return "unknown";
  const { difference, low, high } = result;
  if (signed(low) === signed(high)) return signed(difference);
  return `${signed(difference)} (${signed(low).replace(" %", "")} to ${signed(high)})`;
}

export function measureName({ measure, resource, name }: Comparison): string {
  if (measure === "throughput") return "shots an hour";
  return [measure === "cycle" ? "cycle" : name, resource].join(", ");
}

const plainMean = (estimate: Estimate | undefined): string =>
  estimate === undefined ? "unknown" : plainNumber(estimate.mean);

/** The answer, its sureness and what to do: a sentence each. */
export function matchFinding(match: LogMatch, verdict: Verdict): readonly string[] {
  return [
    ...answerOf(match, verdict),
    tracedSentence(match),
    blameSentence(match, verdict),
    `Next: ${adviceOf(match, verdict)}`,
  ];
}

function answerOf(match: LogMatch, { agreement, decisive }: Verdict): readonly string[] {
  const { margin, comparisons, shots, hours } = match;
  const within = shareWords(margin);
  // Stations that were timed one after the other have no output in common.
  const main = comparisons.find(({ measure }) => measure === "throughput") ?? decisive[0];
  const [subject, what] =
    main?.measure === "throughput" ? ["Output", "shots an hour"] : [`The cycle of ${main?.resource}`, "s a cycle"];
  const both = `${plainMean(main?.model)} ${what} in the model, ${plainMean(main?.log)} in the log`;
  const counted = `${grouped(shots)} ${shots === 1 ? "shot" : "shots"}`;
  if (main?.result === undefined)
    return [`Undecided: the log has too few shots to compare, ${counted} in ${lengthText(hours)}.`];
  const basis = `${subject} differs by ${differenceText(main.result)}, 90 % interval, ${counted} in ${lengthText(hours)} of log.`;
  if (agreement === "agrees") return [`The model agrees with the log within ${within}: ${both}.`, basis];
  if (agreement === "undecided") {
    return [`Undecided: the log does not show whether the model agrees within ${within}: ${both}.`, basis];
  }
  const worst = decisive.find(({ result }) => result?.agreement === "differs");
  const isOther = worst !== undefined && worst !== main;
  const other = isOther ? ` The cycle of ${worst.resource} differs by ${differenceText(worst.result)}.` : "";
  return [`The model does not agree with the log within ${within}: ${both}.`, `${basis}${other}`];
}

const lengthText = (hours: number): string => formatQuantity(hours * 3600, "time", { digits: 3 });

function tracedSentence({ traced, tracedMargin, tracedHours, hours, steps }: LogMatch): string {
  const known = steps.filter(({ isTraced }) => isTraced).length;
  const own =
    known === steps.length ? "the log's own step times" : `the log's own times of ${known} of ${steps.length} steps`;
  const held =
    tracedHours === undefined ? own : `${own} of its first ${lengthText(tracedHours)} of ${lengthText(hours)}`;
  if (known === 0)
    return "No step of the model has times in the log, so that step times and logic cannot be separated.";
  if (traced === undefined)
    return `With ${held} in the model there are too few shots to compare, or the stations are not timed at once.`;
  const margin = shareWords(tracedMargin);
  const words = { agrees: `within ${margin}`, differs: `more than ${margin}`, undecided: `undecided within ${margin}` };
  return `With ${held} the model's output${tracedHours === undefined ? "" : " over them"} differs by ${differenceText(traced)}: ${words[traced.agreement]}.`;
}

function blameSentence({ steps }: LogMatch, { blame, steps: wrong, waits }: Verdict): string {
  const named = wrong.map((each) => `${measureName(each)} (${perStep(each)})`).join("; ");
  const apart = waits.map((each) => `${measureName(each)} (${signed(shareLess(each))} of the time)`).join("; ");
  const isMostlyUnknown = 2 * steps.filter(({ isTraced }) => isTraced).length < steps.length;
  const isPartial = steps.some(({ isTraced }) => !isTraced);
  switch (blame) {
    case "none":
      return "Step times and logic are both right within these margins.";
    case "times":
      return `The step times of the model are wrong, not its logic${named === "" ? "." : `: ${named}.`}`;
    case "logic":
      return `The logic is wrong${isPartial ? ", or a step that the log lacks" : ""}: order of serving, operators, waits or stops.${apart === "" ? "" : ` Log less model: ${apart}.`}`;
    case "hidden":
      return `The output agrees, yet not with the log's own step times: the logic is wrong${isPartial ? ", or a step that the log lacks" : ""}: order of serving, operators, waits or stops.${apart === "" ? "" : ` Log less model: ${apart}.`}`;
    case "unclear":
      return `Step times and logic cannot yet be separated${isMostlyUnknown ? ": the log lacks most steps" : ""}.`;
  }
}

function perStep({ log, model }: Comparison): string {
  const time = (estimate: Estimate | undefined): string => formatQuantity(estimate?.mean ?? 0, "time", { digits: 3 });
  return `log ${time(log)}, model ${time(model)}`;
}

/** For two batches of five cycles, and one shot more. */
const leastForMatch = 11;

function adviceOf(
  { steps, margin, tracedHours }: LogMatch,
  { agreement, blame, decisive, hoursNeeded, waits }: Verdict,
): string {
  if (blame === "times")
    return "write the log's times into the model with `blowcell fit LOG --into FILE`, then match again.";
  if (blame === "logic" || blame === "hidden") {
    const where = waits[0]
      ? `what ${waits[0].resource} waits for in "${waits[0].name}"`
      : "which station is served next, and who does what";
    return `watch ${where}; correct dispatch, crew or stops in the model, then match again.`;
  }
  if (decisive.some(({ result }) => result === undefined)) return `log ${leastForMatch} shots or more of each station.`;
  if (agreement === "undecided") {
    return hoursNeeded === undefined
      ? `log more shots; where the difference lies near ${shareWords(margin)}, name another --margin.`
      : `log about ${formatQuantity(hoursNeeded * 3600, "time", { digits: 2 })} in all.`;
  }
  const missing = steps.filter(({ isTraced }) => !isTraced);
  if (missing.length > 0)
    return `log ${missing
      .slice(0, 2)
      .map(({ resource, step }) => `${step} of ${resource}`)
      .join(" and ")} too, which the log lacks.`;
  return blame === "none"
    ? "use the model; match again after each change of the line."
    : tracedHours === undefined
      ? "log more shots, to separate step times from logic."
      : "match a part of the log with few stops, to separate step times from logic.";
}
