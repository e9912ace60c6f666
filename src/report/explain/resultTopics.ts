// Topics of what comes out: files, columns, measures, indicators, cost items and rows of the process window.
import { costRules } from "#analysis/indicators/cost.ts";
import { COST_AN_HOUR, COST_MEASURE, costAnHourMeaning, costMeasureMeaning } from "#analysis/indicators/costStudy.ts";
import { plannedKpiSpecs } from "#analysis/indicators/kpi.ts";
import { measureSpecs, productMeasure, rejectsMeasure } from "#analysis/replication/measures.ts";
import { orderQuantityMeanings } from "#analysis/promise/orderUses.ts";
import { windowFacts } from "#physics/window/processWindow.ts";
import { tableSpecs } from "#report/tables/tableSpecs.ts";
import { mergedTopics, type Topic } from "./topic.ts";

export function resultTopics(): readonly Topic[] {
  return [
    ...tableSpecs.map(fileTopic),
    ...mergedTopics(tableSpecs.flatMap(columnTopics)),
    ...measureTopics(),
    ...orderTopics(),
    ...plannedKpiSpecs.map(indicatorTopic),
    ...costRules.map(costTopic),
    ...windowFacts().map(windowTopic),
  ];
}

type Spec = (typeof tableSpecs)[number];

function fileTopic({ name, meaning, columns }: Spec): Topic {
  return {
    names: [`${name}.csv`, name],
    kind: "CSV file",
    meaning,
    details: [["columns", columns.map((column) => column.name).join(", ")]],
  };
}

function columnTopics({ name, columns }: Spec): readonly Topic[] {
  return columns.map((column) => ({
    names: [column.name, `${name}.csv ${column.name}`],
    kind: "column",
    of: `${name}.csv`,
    meaning: `${column.meaning}.`,
    unit: column.unit === undefined ? column.type : `${column.type} in ${column.unit}`,
  }));
}

function measureTopics(): readonly Topic[] {
  const of = "throughput.csv";
  const more = ["throughput.csv", "±"];
  const own = Object.entries(measureSpecs).map(([name, { unit, meaning }]): Topic => ({
    names: [name],
    kind: "measure",
    of,
    meaning,
    unit,
    more,
  }));
  const { prefix, unit, meaning } = rejectsMeasure;
  return [
    ...own,
    {
      names: [`${productMeasure.prefix}PRODUCT`, "good parts by product"],
      kind: "measure",
      of,
      meaning: productMeasure.meaning,
      unit: productMeasure.unit,
      more,
    },
    { names: [`${prefix}REASON`, prefix, "rejects"], kind: "measure", of, meaning, unit, more },
    {
      names: [COST_MEASURE, "cost"],
      kind: "measure",
      of,
      meaning: costMeasureMeaning,
      unit: "currency",
      more: ["costs"],
    },
    { names: [COST_AN_HOUR], kind: "measure", of, meaning: costAnHourMeaning, unit: "currency", more: ["costs"] },
  ];
}

function indicatorTopic({ name, formula, meaning, unit }: (typeof plannedKpiSpecs)[number]): Topic {
  const symbol = /^[A-Z]+(?= =|$)/u.exec(formula)?.[0];
  return {
    names: [name, ...(symbol === undefined ? [] : [symbol]), ...(name === "OEE index" ? ["OEE"] : [])],
    kind: "indicator",
    of: "kpi.csv, ISO 22400-2",
    meaning,
    unit,
    details: [["formula", formula]],
    more: ["indicators", "time elements"],
  };
}

function costTopic({ item, meaning, rate, window }: (typeof costRules)[number]): Topic {
  return {
    names: [item],
    kind: "cost item",
    of: "cost.csv",
    meaning,
    details: [["needs", [`costs.${rate}`, ...(window?.keys ?? [])].join(", ")]],
    more: [`costs.${rate}`],
  };
}

function windowTopic(facts: ReturnType<typeof windowFacts>[number]): Topic {
  const { quantities, field, meaning, unit, source, needs, below, above } = facts;
  const remedies: readonly (readonly [string, string | undefined])[] =
    below === above
      ? [["outside", below]]
      : [
          ["below", below],
          ["above", above],
        ];
  const [first = "", ...others] = quantities;
  return {
    names: [first, ...others],
    kind: "window row",
    of: `${field}; in ${unit}`,
    meaning,
    details: [
      ["needs", ["product.material", ...needs.filter(isGiven)].join(", ")],
      ...remedies.flatMap(([label, words]) => (words === undefined ? [] : [[label, words] as const])),
      ["source", source],
    ],
  };
}

/** Step times are given in every scenario, and the throughput follows from the cycle. */
function isGiven(key: string): boolean {
  return !key.startsWith("station.steps.") && key !== "station.cavities" && key !== "delivery.throughput";
}

function orderTopics(): readonly Topic[] {
  return Object.entries(orderQuantityMeanings).map(([name, meaning]): Topic => ({
    names: [name],
    kind: "measure",
    of: "promise.csv",
    meaning,
    more: ["promise.csv", "chance"],
  }));
}
