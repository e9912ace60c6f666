// Splits the time of a work unit into the time elements of ISO 22400-2, by one printed mapping from the cell's states.
import { TICKS_PER_SECOND } from "#engine/sampler.ts";

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
    states: ["stopped", "being cleared", "repairing"],
    element: "ADET",
    reason: "delay by a stop, clearing and repair included",
  },
  {
    states: ["on break"],
    element: "ADOT",
    reason: "the shift goes on, and production waits for somebody who is away",
  },
  { kind: "working", element: "APT", reason: "production" },
  { kind: "waiting", element: "ADOT", reason: "down while starved or blocked: time that is lost" },
  { kind: "stopped", element: "ADET", reason: "delay by a stop" },
  { kind: "off", element: "outside PBT", reason: "nobody planned to produce" },
];

/** Seconds. */
export interface TimeElements {
  /** Planned busy time. */
  readonly PBT: number;
  /** Actual unit busy time, AUPT + ADET. */
  readonly AUBT: number;
  /** Actual unit processing time, APT + AUST. */
  readonly AUPT: number;
  /** Actual production time. */
  readonly APT: number;
  /** Actual unit set-up time. */
  readonly AUST: number;
  /** Actual unit delay time. */
  readonly ADET: number;
  /** Actual unit down time. */
  readonly ADOT: number;
  /** Actual order execution time: the run is one order, which holds the work unit for all of its planned time. */
  readonly AOET: number;
}

export interface StateSeconds {
  readonly state: string;
  readonly kind: string;
  readonly seconds: number;
}

export function elementOf(state: string, kind: string): StateElement {
  const rule = elementRules.find((each) => each.states?.includes(state) ?? each.kind === kind);
  return rule?.element ?? "APT";
}

/** PBT = APT + AUST + ADET + ADOT, in whole microseconds, so that no planned time is lost or counted twice. */
export function timeElements(states: readonly StateSeconds[]): TimeElements {
  const ticks = (element: StateElement): number => {
    const seconds = states
      .filter(({ state, kind }) => elementOf(state, kind) === element)
      .reduce((sum, each) => sum + each.seconds, 0);
    return Math.round(seconds * TICKS_PER_SECOND);
  };
  const [apt, aust, adet, adot] = [ticks("APT"), ticks("AUST"), ticks("ADET"), ticks("ADOT")];
  const seconds = (sum: number): number => sum / TICKS_PER_SECOND;
  const PBT = seconds(apt + aust + adet + adot);
  return {
    PBT,
    AUBT: seconds(apt + aust + adet),
    AUPT: seconds(apt + aust),
    APT: seconds(apt),
    AUST: seconds(aust),
    ADET: seconds(adet),
    ADOT: seconds(adot),
    AOET: PBT,
  };
}
