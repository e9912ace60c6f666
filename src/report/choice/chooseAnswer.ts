// The answer to `choose` on one screen: the best layout in a sentence, then the ranking.
import type { Choice, RankedLayout } from "#analysis/choice/choiceResult.ts";
import { investmentOf } from "#analysis/choice/layout.ts";
import { COST_AN_HOUR, COST_MEASURE } from "#analysis/indicators/costStudy.ts";
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import type { LeftOutLayout } from "#report/tables/asked/chooseTable.ts";
import { alignedLines, wrappedLines } from "#report/words/alignedLines.ts";
import { assumptionWords } from "#report/words/assumptionWords.ts";
import { shortCautions } from "#report/words/cautions.ts";
import { mixNote } from "#report/words/layoutWords.ts";
import { grouped, plainNumber } from "#report/words/digits.ts";
import {
  choiceSentence,
  nameOf,
  procedureSentences,
  rareSentences,
  simplerSentences,
  withinSentences,
} from "./choiceSentences.ts";
import { criterionWords, intervalWords, meanWords } from "./criterionWords.ts";

export interface ChoiceAnswer {
  readonly choice: Choice;
  readonly leftOut: readonly LeftOutLayout[];
  /** The call names no worthwhile difference. */
  readonly usesDefault: boolean;
}

/** Of more layouts the file and the page have the rest. */
const mostRows = 8;

export function chooseAnswer({ choice, leftOut, usesDefault }: ChoiceAnswer, width: number, units: UnitSystem): string {
  const wrapped = (sentence: string): readonly string[] => wrappedLines(sentence, width);
  const columns = columnsOf(choice, units, "brief");
  const right = columns.flatMap(({ isRight }, i) => (isRight === true ? [i] : []));
  const rest = choice.ranking.length - mostRows;
  return [
    ...[choiceSentence(choice, units), ...withinSentences(choice, units), ...simplerSentences(choice)].flatMap(wrapped),
    "",
    ...alignedLines(rowsOf(choice, columns, mostRows), right, width),
    ...(rest > 0 ? [`${rest} more layouts are in choose.csv.`] : []),
    "",
    ...[
      ...leftOutWords(choice, leftOut),
      ...procedureSentences(choice, units, usesDefault),
      ...columnWords(choice),
      ...starWords(choice),
      ...rareSentences(choice),
      ...mixNote(choice.ranking.map(({ layout }) => layout)),
      ...assumptionWords(choice.ranking.map(({ layout }) => layout.scenario)),
    ].flatMap(wrapped),
    ...shortCautions,
    "",
  ].join("\n");
}

interface Column {
  readonly heading: string;
  readonly cell: (ranked: RankedLayout, rank: number) => string;
  readonly isRight?: true;
}

/** All columns for a page, and those that fit a terminal. */
type Extent = "whole" | "brief";

/** A column that no layout fills is left out. */
function columnsOf(choice: Choice, units: UnitSystem, extent: Extent): readonly Column[] {
  const { factor, unit, name } = criterionWords(choice, units);
  const currency = choice.ranking[0]?.layout.scenario.costs?.currency ?? "";
  const isByCost = choice.goal.criterion.measure === COST_MEASURE;
  const brief = extent === "brief";
  // The first sentence names the measure.
  const measure = name === "" || brief ? unit : `${name}, ${unit}`;
  const columns: readonly (Column | false)[] = [
    { heading: brief ? "" : "rank", cell: (_, rank) => String(rank), isRight: true },
    { heading: "layout", cell: nameOf },
    {
      heading: brief ? measure.replace(/^good | good parts$/u, "") : measure,
      cell: ({ value }) => (value ? intervalWords(value, factor) : ""),
      isRight: true,
    },
    {
      heading: "behind",
      cell: ({ behind }) => (behind ? (brief ? meanWords : intervalWords)(behind, factor) : ""),
      isRight: true,
    },
    {
      heading: `${currency}/1,000`,
      cell: ({ costPerThousand }) => (costPerThousand && !isByCost ? meanWords(costPerThousand) : ""),
      isRight: true,
    },
    ...(brief ? [starredCost(choice)] : costColumns(choice, currency)),
    !brief && { heading: "replications", cell: ({ replications }) => grouped(replications), isRight: true },
    { heading: brief ? "dropped" : "result", cell: (ranked) => resultWords(ranked, choice, extent) },
  ];
  return columns
    .filter((column) => column !== false)
    .filter(({ cell }, i) => i < 3 || choice.ranking.some((ranked) => cell(ranked, 0) !== ""));
}

/** Investment, or the cost of an hour where none is given; a star marks the Pareto set. */
function starredCost(choice: Choice): Column {
  const { key, heading } = starred(choice);
  const amount = (ranked: RankedLayout): string => {
    if (key === "investment") return grouped(investmentOf(ranked.layout) ?? "");
    return ranked.costPerHour ? meanWords(ranked.costPerHour) : "";
  };
  const star = ({ efficiency }: RankedLayout): string => (efficiency[key] === true ? "*" : " ");
  return {
    heading: `${heading} `,
    cell: (ranked) => (amount(ranked) === "" ? "" : amount(ranked) + star(ranked)),
    isRight: true,
  };
}

function starred({ ranking }: Choice): { readonly key: "investment" | "perHour"; readonly heading: string } {
  const hasInvestment = ranking.some(({ layout }) => investmentOf(layout) !== null);
  return hasInvestment ? { key: "investment", heading: "to buy" } : { key: "perHour", heading: "an hour" };
}

function starWords(choice: Choice): readonly string[] {
  const { key } = starred(choice);
  return choice.ranking.some(({ efficiency }) => efficiency[key] === true)
    ? ["* no layout makes as many good parts for less (Pareto set)."]
    : [];
}

function costColumns({ goal }: Choice, currency: string): readonly Column[] {
  const isByCost = goal.criterion.measure === COST_AN_HOUR;
  return [
    {
      heading: `${currency} an hour`,
      cell: ({ costPerHour }) => (costPerHour && !isByCost ? meanWords(costPerHour) : ""),
      isRight: true,
    },
    { heading: `${currency} to buy`, cell: ({ layout }) => grouped(investmentOf(layout) ?? ""), isRight: true },
    {
      heading: "floor space of options",
      cell: ({ layout: { floorSpace } }) => (floorSpace === null ? "" : `${plainNumber(floorSpace)} m²`),
      isRight: true,
    },
  ];
}

export function rankingRows(choice: Choice, units: UnitSystem, most: number): readonly (readonly string[])[] {
  return rowsOf(choice, columnsOf(choice, units, "whole"), most);
}

function rowsOf({ ranking }: Choice, columns: readonly Column[], most: number): readonly (readonly string[])[] {
  const rows = ranking.slice(0, most).map((ranked, i) => columns.map(({ cell }) => cell(ranked, i + 1)));
  return [columns.map(({ heading }) => heading), ...rows];
}

/** In brief "by 1 at 20": by the first of the ranking, at replication 20. */
function resultWords({ verdict, dropped, need, leftOut }: RankedLayout, { ranking }: Choice, extent: Extent): string {
  const met = need ? `need ${need.met}/${need.replications}` : "";
  if (verdict === "left out") return extent === "brief" ? verdict : `left out: ${leftOut ?? ""}`;
  if (verdict === "cannot meet the need") return met;
  if (dropped) {
    const rank = ranking.findIndex((each) => nameOf(each) === dropped.by) + 1;
    return `${extent === "brief" ? "" : "dropped "}by ${rank} at ${dropped.at}`;
  }
  return verdict === "best" && need ? `best, ${met}` : verdict;
}

/** What the last column means. */
export function columnWords({ ranking, zone }: Choice): readonly string[] {
  const example = ranking.findIndex(({ dropped }) => dropped !== null);
  const { dropped } = ranking[example] ?? {};
  const rank = ranking.findIndex((each) => nameOf(each) === dropped?.by) + 1;
  return [
    ...(dropped
      ? [`by ${rank} at ${dropped.at}: dropped by the layout of rank ${rank}, at replication ${dropped.at}.`]
      : []),
    ...(zone ? ["need m/n: the need was met in m of n runs."] : []),
  ];
}

const mostLeftOut = 3;

function leftOutWords({ ranking }: Choice, refused: readonly LeftOutLayout[]): readonly string[] {
  const stuck = ranking.flatMap((ranked) =>
    ranked.leftOut === null ? [] : [{ name: nameOf(ranked), reason: ranked.leftOut }],
  );
  const all = [...refused, ...stuck];
  if (all.length === 0) return [];
  const shown = all.slice(0, mostLeftOut).map(({ name, reason }) => `${name} (${reason.replace(/\.$/u, "")})`);
  const rest = all.length - shown.length;
  return [`Left out: ${shown.join("; ")}${rest > 0 ? `; ${rest} more in choose.csv` : ""}.`];
}
