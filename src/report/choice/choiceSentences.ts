// The sentences of a choice: which layout is best and how sure that is, what a simpler one loses, and how it was found.
import type { Choice, RankedLayout } from "#analysis/choice/choiceResult.ts";
import type { Need } from "#analysis/choice/observed.ts";
import { formatQuantity, type UnitSystem } from "#foundation/formatQuantity.ts";
import { grouped, percent, withInterval } from "#report/words/digits.ts";
import { criterionWords, meanWords, partsUnit } from "./criterionWords.ts";

const secondsPerHour = 3600;

/** The answer: a sentence that stands alone. */
export function choiceSentence(choice: Choice, units: UnitSystem): string {
  const [first] = choice.ranking;
  if (!first) return "";
  if (choice.verdict === "none") return noneSentence(choice);
  const { factor, unit, name } = criterionWords(choice, units);
  const made = `${name === "" ? "" : `${name} `}${meanWords(first.value!, factor)} ${unit}`;
  const sure = `${sureWords(choice.goal.confidence)} confidence`;
  const near = `${rounded(choice.worthwhile * factor)}${name === "" ? "" : ` ${unit}`}`;
  if (choice.verdict === "chosen") {
    const others = choice.ranking.slice(1).map(({ verdict }) => verdict);
    if (choice.goal.need && others.every((each) => each === "cannot meet the need" || each === "left out")) {
      return `Only ${nameOf(first)} can make ${needWords(choice)}: ${made}, with ${sure}.`;
    }
    const able = choice.goal.need ? ` of the layouts that can make ${needWords(choice)}` : "";
    return `${nameOf(first)} is best${able}: ${made}, with ${sure} within ${near} of the best.`;
  }
  return undecidedSentence(choice, made);
}

function undecidedSentence({ ranking, goal, ...choice }: Choice, made: string): string {
  const open = ranking.filter(({ verdict }) => verdict === "not decided").map(nameOf);
  const runs = grouped(Math.max(...ranking.map(({ replications }) => replications)));
  const first = ranking[0]!;
  const isNeedOpen = first.need?.kind === "undecided";
  const why = isNeedOpen
    ? `whether ${nameOf(first)} can make ${needWords({ goal, ranking, ...choice })} is open`
    : `${listed(open)} remain`;
  return `Not decided after ${runs} replications: ${why}. ${nameOf(first)} is best so far: ${made}. Raise --replications or --worthwhile to decide.`;
}

function noneSentence(choice: Choice): string {
  const { ranking, goal } = choice;
  if (!goal.need) return "No layout can be chosen: each of them was left out.";
  const share = ({ need }: RankedLayout): number => (need ? need.met / need.replications : 0);
  const [nearest] = ranking
    .filter(({ goodParts }) => goodParts !== null)
    .toSorted((one, other) => share(other) - share(one) || other.goodParts!.mean - one.goodParts!.mean);
  return [`No layout can make ${needWords(choice)}.`, ...(nearest ? [nearestSentence(nearest, goal.need)] : [])].join(
    " ",
  );
}

/** The time that the parts take on average; beyond its end a calendar is not known. */
function nearestSentence(nearest: RankedLayout, { parts, within }: Need): string {
  const { goodParts, need, layout } = nearest;
  const output = goodParts!;
  const made = `Nearest: ${nameOf(nearest)}, ${meanWords(output, within / secondsPerHour)} parts on average, enough in ${need?.met} of ${need?.replications} runs`;
  const needed = (parts / output.mean) * secondsPerHour;
  const isLonger = !layout.scenario.calendar && output.mean > 0 && needed > within;
  return `${made}${isLonger ? `; it needs ${formatQuantity(needed, "time", { digits: 3 })} on average` : ""}.`;
}

/** "95 %": as it was asked for. */
const sureWords = (share: number): string => `${Number((100 * share).toPrecision(6))} %`;

export const nameOf = ({ layout }: RankedLayout): string => layout.scenario.name;

/** "200,000 parts in 5 d with a chance of 95 %". */
export function needWords({ goal }: Choice): string {
  if (!goal.need) return "";
  const { parts, within, chance } = goal.need;
  return `${grouped(parts)} parts in ${formatQuantity(within, "time", { digits: 3 })} with a chance of ${sureWords(chance)}`;
}

/** Other layouts that are as good: their difference does not matter. */
export function withinSentences(choice: Choice, units: UnitSystem): readonly string[] {
  const within = choice.ranking.filter(({ isWithin }) => isWithin === true);
  if (choice.verdict !== "chosen" || within.length === 0) return [];
  const { factor, unit } = criterionWords(choice, units);
  const most = Math.max(...within.map(({ behind }) => behind!.mean + (behind!.halfWidth ?? 0)));
  const far = most === 0 ? "equal to it" : `at most ${rounded(most * factor)} ${unit} behind`;
  return [`No difference that matters: ${shortened(within.map(nameOf))} ${within.length === 1 ? "is" : "are"} ${far}.`];
}

/** With the digits of a limit. */
const rounded = (value: number): string => grouped(Number(value.toPrecision(3)));

/** What it costs to take the next simpler layout. */
export function simplerSentences(choice: Choice): readonly string[] {
  const { simpler, ranking, verdict } = choice;
  const [first] = ranking;
  if (verdict === "none" || !first) return [];
  if (!simpler) return [];
  const { ranked, by, saved, partsLost } = simpler;
  const currency = ranked.layout.scenario.costs?.currency ?? "";
  const saves =
    by === "investment"
      ? `saves ${grouped(saved)} ${currency} of investment`
      : `has ${saved} ${saved === 1 ? "station" : "stations"} fewer`;
  const { factor, words } = partsUnit(choice);
  const isSeen = Math.abs(partsLost.mean) > (partsLost.halfWidth ?? 0);
  const amount = withInterval({ ...partsLost, mean: Math.abs(partsLost.mean) }, factor);
  const share = first.goodParts!.mean === 0 ? "" : `, ${percent(Math.abs(partsLost.mean) / first.goodParts!.mean)}`;
  const loses = !isSeen
    ? `and shows no difference in ${words} (${amount})`
    : partsLost.mean > 0
      ? `and loses ${amount} ${words}${share}`
      : `and makes ${amount} ${words} more${share}`;
  return [`The next simpler layout, ${nameOf(ranked)}, ${saves} ${loses}.`];
}

/** Which layouts make the most for their cost. */
export function efficientSentence({ ranking }: Choice, key: keyof RankedLayout["efficiency"]): string {
  const names = ranking.filter(({ efficiency }) => efficiency[key] === true).map(nameOf);
  return `Most parts for their ${key === "investment" ? "investment" : "cost an hour"}: ${shortened(names)}.`;
}

const mostNames = 5;

function shortened(names: readonly string[]): string {
  const rest = names.length - mostNames;
  return rest > 1 ? `${names.slice(0, mostNames).join(", ")} and ${rest} more` : listed(names);
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
}

/** What does not matter, what the intervals hold, and the replications spent. */
export function procedureSentences(choice: Choice, units: UnitSystem, usesDefault: boolean): readonly string[] {
  const { goal, ranking, worthwhile, zone } = choice;
  const { factor, unit, name } = criterionWords(choice, units);
  const share =
    goal.worthwhile.by === "share"
      ? `: ${sureWords(goal.worthwhile.value)} of ${choice.base}${usesDefault ? ", the default of --worthwhile" : ""}`
      : "";
  return [
    `Differences below ${rounded(worthwhile * factor)} ${name === "" ? unit : `${unit} in ${name}`} do not matter${share}.`,
    ...(zone
      ? [`A layout whose chance is between ${percent(zone.low)} and ${percent(zone.high)} may pass or fail the need.`]
      : []),
    spentSentence(choice),
    `Common random numbers, seed "${ranking[0]!.layout.scenario.run.seed}"; ± holds for all layouts together with ${sureWords(goal.confidence)} confidence.`,
  ];
}

function spentSentence({ ranking, replications, spent, goal }: Choice): string {
  const { length, warmup } = ranking[0]!.layout.scenario.run;
  const time = (value: number): string => formatQuantity(value, "time", { digits: 3 });
  const cut = warmup === "auto" || warmup === 0 ? "" : ` (warm-up of ${time(warmup)} not counted)`;
  const made = `${grouped(replications)} replications of ${time(length)} in all${cut}`;
  if (!spent) return `${made}.`;
  const { used, layouts, each } = spent;
  const selected = goal.need ? `, ${grouped(used)} for the selection` : "";
  return `${made}${selected}; a selection of fixed size needs ${layouts} × ${grouped(each)} = ${grouped(layouts * each)}.`;
}

/** Stops that are too rare for the spread of these runs to show what they cost. */
export function rareSentences({ rareStops, goal }: Choice): readonly string[] {
  if (rareStops.length === 0) return [];
  const names = [...new Set(rareStops.flatMap(({ stops }) => stops.map(({ name }) => name)))];
  const lengths = rareStops.flatMap(({ length }) => length ?? []);
  const enough =
    lengths.length === 0 || goal.need
      ? ""
      : ` --length "${grouped(Math.max(...lengths) / secondsPerHour).replaceAll(",", "")} h" holds enough.`;
  return [`Few stops in these runs: ${names.join(", ")}. The confidence may be too high.${enough}`];
}
