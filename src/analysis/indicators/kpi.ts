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
  readonly meaning: string;
  readonly unit: "s" | "1" | "share" | "1/h";
  /** Not finite where the divisor is 0. */
  readonly value: (input: KpiInput) => number;
}

const secondsPerHour = 3600;

/** The inputs of the indicators, so that a reader can check each indicator. */
const ingredients: readonly KpiSpec[] = [
  {
    name: "planned busy time",
    meaning: "Planned time of production, without time off shift and planned pauses.",
    formula: "PBT",
    unit: "s",
    value: ({ PBT }) => PBT,
  },
  {
    name: "actual production time",
    meaning: "Time in which the unit produced.",
    formula: "APT",
    unit: "s",
    value: ({ APT }) => APT,
  },
  {
    name: "actual unit set-up time",
    meaning: "Time of start-ups, purges and changes.",
    formula: "AUST",
    unit: "s",
    value: ({ AUST }) => AUST,
  },
  {
    name: "actual unit delay time",
    meaning: "Time of machine stops, clearing and repair.",
    formula: "ADET",
    unit: "s",
    value: ({ ADET }) => ADET,
  },
  {
    name: "actual unit down time",
    meaning: "Planned time that was neither production nor set-up nor delay, such as waits.",
    formula: "ADOT",
    unit: "s",
    value: ({ ADOT }) => ADOT,
  },
  {
    name: "actual unit processing time",
    meaning: "Time of production and set-up.",
    formula: "AUPT = APT + AUST",
    unit: "s",
    value: ({ AUPT }) => AUPT,
  },
  {
    name: "actual unit busy time",
    meaning: "Time of production, set-up and delay.",
    formula: "AUBT = AUPT + ADET",
    unit: "s",
    value: ({ AUBT }) => AUBT,
  },
  {
    name: "actual order execution time",
    meaning: "Time of the order; the run is one order, so it is the planned busy time.",
    formula: "AOET = PBT",
    unit: "s",
    value: ({ AOET }) => AOET,
  },
  {
    name: "planned run time per item",
    meaning: "Planned time for one part: of the cell the ideal seconds a shot over the parts of a shot.",
    formula: "PRI",
    unit: "s",
    value: ({ PRI }) => PRI,
  },
  {
    name: "produced quantity",
    meaning: "Removed parts, good or not.",
    formula: "PQ",
    unit: "1",
    value: ({ PQ }) => PQ,
  },
  { name: "good quantity", meaning: "Parts that no check rejects.", formula: "GQ", unit: "1", value: ({ GQ }) => GQ },
];

/** Source: ISO 22400-2, 2014, clause 6 (read in the open ontology and the OPC annexes). */
const indicators: readonly KpiSpec[] = [
  {
    name: "availability",
    meaning: "Share of the planned busy time in which the unit produced.",
    formula: "APT / PBT",
    unit: "share",
    value: ({ APT, PBT }) => APT / PBT,
  },
  {
    name: "effectiveness",
    meaning: "Planned run time of the produced parts over the time in which the unit produced.",
    formula: "PRI PQ / APT",
    unit: "share",
    value: ({ PRI, PQ, APT }) => (PRI * PQ) / APT,
  },
  {
    name: "quality ratio",
    meaning: "Share of the produced parts that are good.",
    formula: "GQ / PQ",
    unit: "share",
    value: ({ GQ, PQ }) => GQ / PQ,
  },
  {
    name: "OEE index",
    meaning: "Overall equipment effectiveness: availability times effectiveness times quality ratio.",
    formula: "PRI GQ / PBT",
    unit: "share",
    value: ({ PRI, GQ, PBT }) => (PRI * GQ) / PBT,
  },
  {
    name: "utilization efficiency",
    meaning: "Share of the busy time in which the unit produced.",
    formula: "APT / AUBT",
    unit: "share",
    value: ({ APT, AUBT }) => APT / AUBT,
  },
  {
    name: "allocation efficiency",
    meaning: "Share of the planned busy time in which the unit was busy: with production, set-up or delay.",
    formula: "AUBT / PBT",
    unit: "share",
    value: ({ AUBT, PBT }) => AUBT / PBT,
  },
  {
    name: "technical efficiency",
    meaning: "Production time over production time and delay.",
    formula: "APT / (APT + ADET)",
    unit: "share",
    value: ({ APT, ADET }) => APT / (APT + ADET),
  },
  {
    name: "setup ratio",
    meaning: "Share of the processing time that is set-up.",
    formula: "AUST / AUPT",
    unit: "share",
    value: ({ AUST, AUPT }) => AUST / AUPT,
  },
  {
    name: "throughput rate",
    meaning: "Parts for each hour of the order.",
    formula: "PQ / AOET",
    unit: "1/h",
    value: ({ PQ, AOET }) => (PQ / AOET) * secondsPerHour,
  },
];

/** Parts made in overtime count, so effectiveness and OEE can exceed 1. */
const overtime: KpiSpec = {
  name: "overtime",
  meaning: "Production and set-up outside the planned busy time; its parts count, its time does not.",
  formula: "AUPT outside PBT",
  unit: "s",
  value: (input) => input.overtime,
};

export const kpiSpecs: readonly KpiSpec[] = [...indicators, ...ingredients];

/** Overtime needs a calendar. */
export const plannedKpiSpecs: readonly KpiSpec[] = [...kpiSpecs, overtime];
