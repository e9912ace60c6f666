// The answer to `promise` on one screen: whether the order can be kept, its dates, and what it uses.
import type { OrderLevers } from "#analysis/promise/orderLeverStudy.ts";
import type { FinishTime, OrderStudy, UseSummary } from "#analysis/promise/orderStudy.ts";
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { alignedLines, wrappedLines } from "#report/words/alignedLines.ts";
import { assumptionWords } from "#report/words/assumptionWords.ts";
import { shortCautions } from "#report/words/cautions.ts";
import { grouped, percent, plainNumber, withInterval } from "#report/words/digits.ts";
import { momentWords, spanWords } from "#report/words/momentWords.ts";
import { settingsWords } from "#report/words/settingsWords.ts";
import { shownUnit } from "#report/words/shownUnits.ts";
import { leverLines } from "./leverLines.ts";

export interface PromiseShown {
  readonly study: OrderStudy;
  /** Null where no change was run. */
  readonly levers: OrderLevers | null;
  readonly units: UnitSystem;
}

export function promiseAnswer({ study, levers, units }: PromiseShown, width = 80): string {
  const wrapped = (words: string): readonly string[] => wrappedLines(words, width);
  return [
    ...settingsWords(study.scenario).flatMap(wrapped),
    ...promiseFinding(study).flatMap(wrapped),
    "",
    ...alignedLines([...dateRows(study), ...partRows(study)], [], width),
    "",
    ...alignedLines(useRows(study, units), [], width),
    "",
    ...(levers ? leverLines(study, levers, width) : []),
    ...notes(study).flatMap(wrapped),
    ...shortCautions,
    "",
  ].join("\n");
}

/** The answer, then how far the due date is. */
export function promiseFinding(study: OrderStudy): readonly string[] {
  const { due, order, scenario, times, replications } = study;
  if (due === null) {
    const by = (share: number): string => momentWords(times.find((time) => time.share === share)!.seconds, scenario);
    return [`${order.name}: half of ${grouped(replications)} runs are done by ${by(0.5)}, 95 % by ${by(0.95)}.`];
  }
  const runs = `${grouped(due.onTime)} of ${grouped(due.replications)} such runs are done by ${momentWords(order.due!, scenario)}`;
  const interval = `(95 % confidence: ${percent(due.low)} to ${percent(due.high)})`;
  const wanted = `a chance of ${percent(order.chance)} is wanted`;
  if (due.verdict === "undecided") return [`Undecided: ${runs} ${interval}; ${wanted}, which lies between.`];
  return [`${due.verdict === "yes" ? "Yes" : "No"}: ${runs} ${interval}; ${wanted}.`, slackWords(study)];
}

/** Against the date by which the wanted share of runs is done. */
function slackWords({ due, order }: OrderStudy): string {
  const slack = due?.slack ?? 0;
  const hours = spanWords(Math.abs(slack));
  const done = `${percent(order.chance)} of the runs are done`;
  return slack >= 0
    ? `Slack: ${done} ${hours} before the due date.`
    : `Late: ${done} only ${hours} after the due date.`;
}

function dateRows({ times, scenario, lines }: OrderStudy): readonly (readonly string[])[] {
  const shown = times.filter(({ share }) => share >= 0.5);
  return [
    ...shown.map((time) => [
      `${percent(time.share)} done by`,
      `${momentWords(time.seconds, scenario)}${around(time, scenario)}`,
    ]),
    ...(lines.length < 2
      ? []
      : lines.map(({ product, quantity, seconds }) => [
          product ?? "parts",
          `${grouped(quantity)} done by ${momentWords(medianOf(seconds), scenario)} in half of the runs`,
        ])),
  ];
}

function medianOf(values: readonly number[]): number {
  return values.toSorted((one, other) => one - other)[Math.ceil(values.length / 2) - 1]!;
}

function around({ interval: { low, high } }: FinishTime, scenario: OrderStudy["scenario"]): string {
  if (low === null || high === null) return "";
  const [from, until] = [momentWords(low, scenario), momentWords(high, scenario)];
  // A date that both ends share is said once.
  const day = scenario.calendar && from.slice(0, -6) === until.slice(0, -6) ? until.slice(-5) : until;
  return from === until ? "" : `  (95 % interval: ${from} to ${day})`;
}

function partRows({ goodAtDue, order }: OrderStudy): readonly (readonly string[])[] {
  if (goodAtDue === null) return [];
  const { mean, single } = goodAtDue;
  const wanted = order.campaigns
    .flatMap(({ quantities }) => quantities)
    .reduce((sum, { quantity }) => sum + quantity, 0);
  const spread =
    single === null ? "" : `; 9 of 10 single runs: ${wholeParts(single.low)} to ${wholeParts(single.high)}`;
  return [["Good by due date", `mean ${withInterval(mean)} of ${grouped(wanted)}${spread}`]];
}

const wholeParts = (parts: number): string => grouped(Math.round(parts));

function useRows({ uses }: OrderStudy, units: UnitSystem): readonly (readonly string[])[] {
  if (uses.length === 0) return [];
  return [["Up to the last part", "mean ± 95 %", "", "9 of 10 single runs"], ...uses.map((use) => useRow(use, units))];
}

function useRow({ quantity, unit, mean, single }: UseSummary, units: UnitSystem): readonly string[] {
  const { symbol, value, difference } = shownUnit(unit, mean.mean, units);
  const range = single === null ? "" : `${plainNumber(value(single.low))} to ${plainNumber(value(single.high))}`;
  return [quantity, withInterval(mean, difference(1)), symbol, range];
}

function notes(study: OrderStudy): readonly string[] {
  const { order, replications, due, missing, scenario } = study;
  const runs = `${grouped(replications)} runs from ${startWords(study)}, each until the last wanted part; nothing is left out as warm-up.`;
  const looks =
    due === null || order.replications !== null
      ? []
      : ["The number of runs grows until the chance is decided; the confidence holds for all looks together."];
  const keys = [...new Set(missing.flatMap((each) => each.keys))];
  return [
    runs,
    ...looks,
    ...(order.due !== null && study.goodAtDue === null
      ? ["The due date is far beyond the finish, so that good parts are not counted there."]
      : []),
    ...(keys.length === 0 ? [] : [`More with ${keys.map((key) => `\`${key}\``).join(", ")}.`]),
    ...assumptionWords([scenario]),
  ];
}

function startWords({ scenario }: OrderStudy): string {
  return scenario.calendar ? momentWords(0, scenario) : "the start";
}
