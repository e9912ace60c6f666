// Which time element of ISO 22400-2 each state of a resource counts as: one mapping for the run, the tables and the README.
import { stateNames, type StateKind, type StateName } from "./stateNames.ts";

/** Where a state's time goes; `outside PBT` is no planned time at all. */
export type StateElement = "APT" | "AUST" | "ADET" | "ADOT" | "outside PBT";

/** States by name, or where a state is not named by its kind; the first rule that fits a state holds. */
export interface ElementRule {
  readonly states?: readonly StateName[];
  readonly kind?: StateKind;
  readonly element: StateElement;
  readonly reason: string;
}

/**
 * Names of the elements after ISO 22400-2:2014 (read in the open ontology and the OPC annexes); which state of a cell belongs
 * to which element is this program's choice, since the standard knows no molds.
 */
export const elementRules: readonly ElementRule[] = [
  { states: [stateNames.offShift], element: "outside PBT", reason: "no production is planned" },
  {
    states: [
      stateNames.changeover,
      stateNames.heating,
      stateNames.purging,
      stateNames.awaitingHeatUp,
      stateNames.awaitingPurge,
    ],
    element: "AUST",
    reason: "set-up, and the wait of a station for the set-up of the screw",
  },
  {
    states: [stateNames.stopped, stateNames.beingCleared, stateNames.clearing, stateNames.repairing],
    element: "ADET",
    reason: "delay by a stop, clearing and repair included",
  },
  {
    states: [stateNames.onBreak],
    element: "ADOT",
    reason: "the shift goes on, and production waits for an operator on break",
  },
  {
    states: [stateNames.extrudingToRegrind],
    element: "ADOT",
    reason: "melt that no mold takes: time that is lost",
  },
  { kind: "working", element: "APT", reason: "production" },
  { kind: "waiting", element: "ADOT", reason: "down while starved or blocked: time that is lost" },
  { kind: "stopped", element: "ADET", reason: "delay by a stop" },
  { kind: "off", element: "outside PBT", reason: "no production is planned" },
];

export function elementOf(state: string, kind: StateKind): StateElement {
  const rule = elementRules.find((each) => each.states?.some((name) => name === state) ?? each.kind === kind);
  return rule?.element ?? "APT";
}

/** Of several resources together the first of these that any of them is in: a cell produces while any part of it works. */
export const elementRank: readonly StateElement[] = ["APT", "AUST", "ADET", "ADOT", "outside PBT"];

/** `overtime` is work outside the planned time: not an element of the standard, listed beside them. */
export type CountedElement = StateElement | "overtime";

/** What the plan makes of a state's element: the plan says what is planned, whatever the states do. */
export interface PlanRule {
  readonly isPlanned: boolean;
  readonly elements: readonly StateElement[];
  readonly counts: CountedElement;
  /** Words of the tables. */
  readonly when: string;
  readonly reason: string;
}

/** The plan is the shifts, less the breaks in which the cell pauses; without a calendar all time is planned. Other elements stay what they are. */
export const planRules: readonly PlanRule[] = [
  {
    isPlanned: true,
    elements: ["outside PBT"],
    counts: "ADOT",
    when: `\`${stateNames.offShift}\` within the planned time`,
    reason: "what is left of a shift when no cycle fits in any more is lost",
  },
  {
    isPlanned: false,
    elements: ["APT", "AUST"],
    counts: "overtime",
    when: "production and set-up outside the planned time",
    reason: "cycles, servers and set-ups that end late; its parts count, its time does not",
  },
  {
    isPlanned: false,
    elements: ["ADET", "ADOT"],
    counts: "outside PBT",
    when: "delay and waits outside the planned time, repairs on call among them",
    reason: "no production is planned",
  },
];

export function countedAs(element: StateElement, isPlanned: boolean): CountedElement {
  const rule = planRules.find((each) => each.isPlanned === isPlanned && each.elements.includes(element));
  return rule?.counts ?? element;
}
