// The key performance indicators of ISO 22400-2 with name and formula.
import type { TimeElements } from "./timeElements.ts";

export interface KpiInput extends TimeElements {
  /** Planned run time of one item, seconds: per part, not per shot. */
  readonly PRI: number;
  /** Parts produced, and the good ones of them. */
  readonly PQ: number;
  readonly GQ: number;
}

export interface KpiSpec {
  readonly name: string;
  readonly formula: string;
  readonly unit: "s" | "1" | "share" | "1/h";
  /** Not finite where the divisor is 0. */
  readonly value: (input: KpiInput) => number;
}

const secondsPerHour = 3600;

/** The inputs of the indicators, so that a reader can check each indicator. */
const ingredients: readonly KpiSpec[] = [
  { name: "planned busy time", formula: "PBT", unit: "s", value: ({ PBT }) => PBT },
  { name: "actual production time", formula: "APT", unit: "s", value: ({ APT }) => APT },
  { name: "actual unit set-up time", formula: "AUST", unit: "s", value: ({ AUST }) => AUST },
  { name: "actual unit delay time", formula: "ADET", unit: "s", value: ({ ADET }) => ADET },
  { name: "actual unit down time", formula: "ADOT", unit: "s", value: ({ ADOT }) => ADOT },
  { name: "actual unit processing time", formula: "AUPT = APT + AUST", unit: "s", value: ({ AUPT }) => AUPT },
  { name: "actual unit busy time", formula: "AUBT = AUPT + ADET", unit: "s", value: ({ AUBT }) => AUBT },
  { name: "actual order execution time", formula: "AOET = PBT", unit: "s", value: ({ AOET }) => AOET },
  { name: "planned run time per item", formula: "PRI", unit: "s", value: ({ PRI }) => PRI },
  { name: "produced quantity", formula: "PQ", unit: "1", value: ({ PQ }) => PQ },
  { name: "good quantity", formula: "GQ", unit: "1", value: ({ GQ }) => GQ },
];

/** Source: ISO 22400-2, 2014, clause 6 (read in the open ontology and the OPC annexes). */
const indicators: readonly KpiSpec[] = [
  { name: "availability", formula: "APT / PBT", unit: "share", value: ({ APT, PBT }) => APT / PBT },
  { name: "effectiveness", formula: "PRI PQ / APT", unit: "share", value: ({ PRI, PQ, APT }) => (PRI * PQ) / APT },
  { name: "quality ratio", formula: "GQ / PQ", unit: "share", value: ({ GQ, PQ }) => GQ / PQ },
  { name: "OEE index", formula: "PRI GQ / PBT", unit: "share", value: ({ PRI, GQ, PBT }) => (PRI * GQ) / PBT },
  { name: "utilization efficiency", formula: "APT / AUBT", unit: "share", value: ({ APT, AUBT }) => APT / AUBT },
  { name: "allocation efficiency", formula: "AUBT / PBT", unit: "share", value: ({ AUBT, PBT }) => AUBT / PBT },
  {
    name: "technical efficiency",
    formula: "APT / (APT + ADET)",
    unit: "share",
    value: ({ APT, ADET }) => APT / (APT + ADET),
  },
  { name: "setup ratio", formula: "AUST / AUPT", unit: "share", value: ({ AUST, AUPT }) => AUST / AUPT },
  {
    name: "throughput rate",
    formula: "PQ / AOET",
    unit: "1/h",
    value: ({ PQ, AOET }) => (PQ / AOET) * secondsPerHour,
  },
];

/** Parts made in overtime count, so effectiveness and OEE can exceed 1. */
const overtime: KpiSpec = {
  name: "overtime",
  formula: "AUPT outside PBT",
  unit: "s",
  value: (input) => input.overtime,
};

export const kpiSpecs: readonly KpiSpec[] = [...indicators, ...ingredients];

/** Overtime needs a calendar. */
export const plannedKpiSpecs: readonly KpiSpec[] = [...kpiSpecs, overtime];
