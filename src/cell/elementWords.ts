// Which time element of ISO 22400-2 each state of a resource counts as: one mapping for the run, the tables and the README.

/** Where a state's time goes; `outside PBT` is no planned time at all. */
export type StateElement = "APT" | "AUST" | "ADET" | "ADOT" | "outside PBT";

/** States by name, or where a state is not named by its kind; the first rule that fits a state holds. */
export interface ElementRule {
  readonly states?: readonly string[];
  readonly kind?: "working" | "waiting" | "stopped" | "off";
  readonly element: StateElement;
  readonly reason: string;
}

/**
 * Names of the elements after ISO 22400-2:2014 (read in the open ontology and the OPC annexes); which state of a cell belongs
 * to which element is this program's choice, since the standard knows no molds.
 */
export const elementRules: readonly ElementRule[] = [
  { states: ["off shift"], element: "outside PBT", reason: "nobody planned to produce" },
  { states: ["changeover", "heating", "purging"], element: "AUST", reason: "set-up" },
  {
    states: ["stopped", "being cleared", "clearing", "repairing"],
    element: "ADET",
    reason: "delay by a stop, clearing and repair included",
  },
  {
    states: ["on break"],
    element: "ADOT",
    reason: "the shift goes on, and production waits for somebody who is away",
  },
  { states: ["extruding to regrind"], element: "ADOT", reason: "melt that no mold takes: time that is lost" },
  { kind: "working", element: "APT", reason: "production" },
  { kind: "waiting", element: "ADOT", reason: "down while starved or blocked: time that is lost" },
  { kind: "stopped", element: "ADET", reason: "delay by a stop" },
  { kind: "off", element: "outside PBT", reason: "nobody planned to produce" },
];

export function elementOf(state: string, kind: string): StateElement {
  const rule = elementRules.find((each) => each.states?.includes(state) ?? each.kind === kind);
  return rule?.element ?? "APT";
}

/** Of several resources together the first of these that any of them is in: a cell produces while any part of it works. */
export const elementRank: readonly StateElement[] = ["APT", "outside PBT", "AUST", "ADET", "ADOT"];
