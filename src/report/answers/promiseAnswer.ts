// The answer to `promise` on one screen: whether the order can be kept, its dates, and what it uses.
import type { OrderLevers } from "#analysis/promise/orderLeverStudy.ts";
import type { FinishTime, OrderStudy, UseSummary } from "#analysis/promise/orderStudy.ts";
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { alignedLines, wrappedLines } from "#report/words/alignedLines.ts";
import { assumptionWords } from "#report/words/assumptionWords.ts";
import { shortCautions } from "#report/words/cautions.ts";
import { grouped, percent, plainNumber, shareWords, withInterval } from "#report/words/digits.ts";
import { momentWords, spanWords } from "#report/words/momentWords.ts";
import { settingsWords } from "#report/words/settingsWords.ts";
import { shownUnit } from "#report/words/shownUnits.ts";
import type { Scenario } from "#scenario/scenario.ts";
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
    ...promiseFinding(study).flatMap(wrapped),
    "",
    ...alignedLines(dateRows(study), [], width),
    "",
    ...partLines(study).flatMap(wrapped),
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
    return [
      `${groupedName(order.name)}: half of ${grouped(replications)} runs are done by ${by(0.5)}, 95 % by ${by(0.95)}.`,
    ];
  }
  const runs = `${grouped(due.onTime)} of ${grouped(due.replications)} runs`;
  const interval = `95 % confidence: ${percent(due.low)} to ${percent(due.high)}`;
  const answer = `the order is done by ${momentWords(order.due!, scenario)} with a chance of ${percent(due.share)} (${runs}; ${interval}); ${shareWords(order.chance)} is wanted`;
  if (due.verdict === "undecided") return [`Undecided: ${answer}, which lies between.`];
  return [`${due.verdict === "yes" ? "Yes" : "No"}: ${answer}.`, slackWords(study)];
}

/** Against the date by which the wanted share of runs is done. */
function slackWords({ due, order }: OrderStudy): string {
  const slack = due?.slack ?? 0;
  const hours = spanWords(Math.abs(slack));
  const done = `${shareWords(order.chance)} of the runs are done`;
  return slack >= 0
    ? `Slack: ${done} ${hours} before the due date.`
    : `Late: ${done} only ${hours} after the due date.`;
}

export function dateRows(study: OrderStudy): readonly (readonly string[])[] {
  const { times, scenario, lines } = study;
  const shown = times.filter(({ share }) => share >= 0.5);
  return [
    ["Runs done", "by", "95 % interval"],
    ...shown.map((time) => [shareWords(time.share), momentWords(time.seconds, scenario), around(time, scenario)]),
    ...(lines.length < 2 ? [] : lines).map(({ product, quantity, seconds }) => {
      return [`50 % of ${product ?? "parts"}`, momentWords(medianOf(seconds), scenario), `${grouped(quantity)} parts`];
    }),
  ];
}

function medianOf(values: readonly number[]): number {
  return values.toSorted((one, other) => one - other)[Math.ceil(values.length / 2) - 1]!;
}

/** The date is left out where it is that of the row. */
function around({ seconds, interval: { low, high } }: FinishTime, scenario: OrderStudy["scenario"]): string {
  if (low === null || high === null) return "needs more runs";
  if (!scenario.calendar) return `${spanWords(low)} to ${spanWords(high)}`;
  const date = momentWords(seconds, scenario).slice(0, -dayTime.length);
  const [from, until] = [low, high].map((each) => {
    const words = momentWords(each, scenario);
    return words.startsWith(date) ? words.slice(-dayTime.length) : words;
  });
  return `${from} to ${until}`;
}

const dayTime = "14:00";

export function partLines({ goodAtDue }: OrderStudy): readonly string[] {
  if (goodAtDue === null) return [];
  const { mean, single } = goodAtDue;
  const made = withInterval(mean);
  if (mean.sd === 0) return [`Good parts at the due date: ${made} in every run.`, ""];
  const spread =
    single === null ? "" : ` 9 of 10 single runs make ${wholeParts(single.low)} to ${wholeParts(single.high)}.`;
  return [`Good parts at the due date: ${made} (mean and its 95 % interval).${spread}`, ""];
}

const wholeParts = (parts: number): string => grouped(Math.round(parts));

export function useRows({ uses }: OrderStudy, units: UnitSystem): readonly (readonly string[])[] {
  if (uses.length === 0) return [];
  return [["Up to the last part", "mean ± 95 %", "", "9 of 10 single runs"], ...uses.map((use) => useRow(use, units))];
}

function useRow({ quantity, unit, mean, single }: UseSummary, units: UnitSystem): readonly string[] {
  const { symbol, value, difference } = shownUnit(unit, mean.mean, units);
  const range = single === null ? "" : `${plainNumber(value(single.low))} to ${plainNumber(value(single.high))}`;
  return [quantity, withInterval(mean, difference(1)), symbol, range];
}

export function notes(study: OrderStudy): readonly string[] {
  const { order, replications, missing, scenario } = study;
  const runs = `${grouped(replications)} runs of ${groupedName(order.name)} from ${startWords(study)}, each until the last wanted part; nothing is left out as warm-up.`;
  const keys = [...new Set(missing.flatMap((each) => each.keys))];
  return [
    ...settingsWords(withoutOrders(scenario)),
    runs,
    ...looksWords(study),
    ...(order.due !== null && study.goodAtDue === null
      ? ["The due date is far beyond the finish, so that good parts are not counted there."]
      : []),
    ...(keys.length === 0 ? [] : [`More with ${keys.map((key) => `\`${key}\``).join(", ")}.`]),
    ...assumptionWords([scenario]),
    ...freeChanges(order),
  ];
}

/** Set-ups that are taken to cost no time, since the scenario has no change to them. */
function freeChanges({ campaigns }: OrderStudy["order"]): readonly string[] {
  const free = campaigns.slice(1).filter(({ change }) => change === null);
  const products = [...new Set(free.flatMap(({ quantities }) => quantities.flatMap(({ product }) => product ?? [])))];
  if (products.length === 0) return [];
  const keys = products.map((product) => `\`to: ${product}\``).join(", ");
  return [`The change to ${products.join(", ")} takes no time: a best case (enter \`changes\` with ${keys}).`];
}

/** The first sentence says what is ordered. */
function withoutOrders(scenario: Scenario): Scenario {
  const { call } = scenario;
  if (call === undefined) return scenario;
  return { ...scenario, call: { ...call, settings: call.settings.filter((text) => !text.startsWith("orders")) } };
}

/** Why the number of runs is what it is. */
function looksWords({ due, order, replications }: OrderStudy): readonly string[] {
  if (due === null) return [];
  const isOpen = due.verdict === "undecided";
  if (order.replications !== null) {
    return isOpen ? ["Leave out `--replications`: the number of runs then grows until the chance is decided."] : [];
  }
  if (!isOpen) {
    return ["The number of runs grows until the chance is decided; the confidence holds for all looks together."];
  }
  return [`${grouped(replications)} runs do not decide: the chance is too close to the wanted one. No more are made.`];
}

function startWords({ scenario }: OrderStudy): string {
  return scenario.calendar ? momentWords(0, scenario) : "the start";
}

/** `150,000 parts of natural bottle`. */
const groupedName = (name: string): string => name.replaceAll(/\d+(?= parts)/gu, grouped);
