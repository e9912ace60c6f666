// All published values that a computation of the project is held to, and their count by area.
import { areas, type Area, type PublishedValue } from "./publishedValue.ts";
import { air } from "./values/air.ts";
import { cooling } from "./values/cooling.ts";
import { heat } from "./values/heat.ts";
import { parison } from "./values/parison.ts";
import { queues } from "./values/queues.ts";
import { screwValues } from "./values/screw.ts";
import { statisticsValues } from "./values/statistics.ts";

export const publishedValues: readonly PublishedValue[] = [
  ...cooling,
  ...heat,
  ...parison,
  ...screwValues,
  ...air,
  ...queues,
  ...statisticsValues,
];

export function countIn(field: string): number {
  return publishedValues.filter(({ area }) => areas[area] === field).length;
}

const sourceOf = ({ source, flag }: PublishedValue): string => `${source} [${flag}]`;
const withUnit = ({ what, printed, unit }: PublishedValue): string =>
  `  - ${what}: ${unit === "1" ? printed : `${printed} ${unit}`}`;

function areaLines(area: Area): string {
  const values = publishedValues.filter((value) => value.area === area);
  const read = values.filter(({ flag }) => flag === "R").length;
  const sources = [...new Set(values.map(sourceOf))];
  const rows = sources.flatMap((source) => [
    `- ${source}`,
    ...values.filter((value) => sourceOf(value) === source).map(withUnit),
  ]);
  const heading = `## ${area[0]!.toUpperCase()}${area.slice(1)}`;
  return [heading, "", `Values: ${values.length}, of them read: ${read} (${areas[area]}).`, "", ...rows, ""].join("\n");
}

/** No worked example of these was found in a source. */
const withoutSource = [
  "sag of a parison",
  "shear rate in an annular die",
  "length of a parison",
  "time to fill a bottle",
  "pinch-off force",
  "stroke and hold-up of a screw",
  "hottest point between two different faces",
  "enthalpy from melt to demold temperature",
  "cut of MSER-5",
  "active periods",
  "technical efficiency, allocation efficiency and setup ratio",
];

/** The list of all values as Markdown. */
export function publishedList(): string {
  const fields = [...new Set(Object.values(areas))].map((field) => `${field} ${countIn(field)}`);
  const opening = [
    "# Published values",
    "",
    "Every value here was printed outside the project. A test computes each one again. [R]: read in the source. [M]: from memory of the",
    "source. Values that are computed only, and values of the catalog, do not count.",
    "",
    `${publishedValues.length} values: ${fields.join(", ")}.`,
    "",
  ];
  const used = (Object.keys(areas) as Area[]).filter((area) => publishedValues.some((value) => value.area === area));
  const ending = ["## Computed independently only", "", ...withoutSource.map((what) => `- ${what}`), ""];
  return [...opening, ...used.map(areaLines), ...ending].join("\n");
}
