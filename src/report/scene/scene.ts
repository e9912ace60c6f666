// What a cell looks like at one time of a run: the plain object that picture, words and page read.
import type { StateKind } from "#cell/words/stateNames.ts";
import type { StepRole } from "#cell/words/stepNames.ts";

/** Every resource at every time has this. */
export interface SceneResource {
  readonly name: string;
  readonly state: string;
  readonly kind: StateKind;
  /** Null where the state belongs to no step. */
  readonly step: string | null;
  readonly role: StepRole | null;
  /** Why it waits, as in the column `cause`; null where it does not wait. */
  readonly cause: string | null;
  /** Seconds of the run at which the state began, and at which it ends; the end is null where the record ends first. */
  readonly since: number;
  readonly until: number | null;
  /** Share of the state that is over, from 0 to 1; 0 where its end is not known. */
  readonly progress: number;
  /** The shot that it serves. */
  readonly station: string | null;
  readonly shot: number | null;
  /** The operator who works at it. */
  readonly operator: string | null;
}

/** Melt in a chamber: the screw's shot volume, a ram's or a head's. Masses in g are null where no mass is given. */
export interface SceneMelt {
  /** Share of the full shot that is gathered, from 0 to 1, linear in time while the chamber fills or empties. */
  readonly share: number;
  readonly grams: number | null;
  readonly shotGrams: number | null;
  readonly capacityGrams: number | null;
}

export interface SceneScrew extends SceneResource {
  /** Null in continuous extrusion, and where heads hold the melt. */
  readonly melt: SceneMelt | null;
  /** Continuous extrusion: share of the parison that has grown at the die, above 1 as its tail grows; null elsewhere. */
  readonly parison: number | null;
  /** It turns: it recharges, extrudes or purges. */
  readonly turns: boolean;
}

export interface SceneValve extends SceneResource {
  /** The station whose port is open; null while every port is blocked. */
  readonly openTo: string | null;
  /** The station to which, or from which, it shifts; null at rest. */
  readonly shiftsFor: string | null;
}

/** A ram of a common accumulator, or of a station's own head. */
export interface SceneRam extends SceneResource {
  /** Null for the one that serves all stations. */
  readonly of: string | null;
  readonly melt: SceneMelt;
}

/** From the open, empty mold to the part that leaves it. */
export interface SceneMold {
  /** 0: halves fully apart; 1: closed. Linear in the steps close and open. */
  readonly closed: number;
  /** What hangs between the halves or lies in the mold. */
  readonly content: "nothing" | "parison" | "part";
  /** Share of the parison that is delivered, from 0 to 1; above 1 only in continuous extrusion, as it outgrows the mold. */
  readonly parison: number;
  /** What the air does, as words; the record holds no pressure. */
  readonly air: "none" | "blowing" | "held" | "venting";
  /** Share of the cooling time that is over; null outside of cooling. */
  readonly cooling: number | null;
  /** °C of the hottest point of the wall; null where wall or material are not given, or nothing lies in the mold. */
  readonly hottest: number | null;
  /** Share by which the parison has grown longer by sag; null where it is not computed. */
  readonly sag: number | null;
  /** Continuous extrusion: 0 under the die, 1 at the blow position; null elsewhere. */
  readonly travel: number | null;
}

export interface SceneStation extends SceneResource {
  readonly cavities: number;
  readonly mold: SceneMold;
  /** Mass of one shot at this station, g; null where no mass is given. */
  readonly shotGrams: number | null;
  /** Since the start of the record. */
  readonly shots: number;
  readonly parts: number;
}

export interface SceneOperator extends SceneResource {
  /** The resource at which the operator works; null while free, walking or on break. */
  readonly at: string | null;
  /** The resource to which the operator walks. */
  readonly walksTo: string | null;
}

/** A server of the takeaway with its places. */
export interface SceneServer {
  readonly name: string;
  readonly places: readonly SceneResource[];
  /** Parts that wait before it, and for how many there is room. */
  readonly before: number;
  readonly room: number | null;
  readonly passed: number;
}

export interface Scene {
  /** Seconds since the start of the replication. */
  readonly seconds: number;
  /** The settled moment at or before this time, from 0, and how many there are. */
  readonly moment: number;
  readonly moments: number;
  readonly delivery: "reciprocating-screw" | "accumulator-head" | "accumulator-common" | "continuous";
  readonly screw: SceneScrew;
  /** Null where there is none. */
  readonly valve: SceneValve | null;
  /** The common ram, or one a head; empty where the screw is the ram. */
  readonly rams: readonly SceneRam[];
  readonly stations: readonly SceneStation[];
  /** Masks that take parts out of molds. */
  readonly masks: readonly SceneResource[];
  readonly operators: readonly SceneOperator[];
  readonly servers: readonly SceneServer[];
  /** Since the start of the record. */
  readonly goodParts: number;
}

/** What the chosen resource does and needs, and what the record shows of its wait. One short sentence each; null where there is none. */
export interface SceneWords {
  readonly does: string;
  /** Such as "It needs a full shot: 63 of 109 g." */
  readonly needs: string | null;
  /** Such as "Freed at 83.50 s by the screw: recharge." */
  readonly turnedOut: string | null;
  /** The resource whose completion it was, and when its step began, so that the reader can go there. */
  readonly freedBy: { readonly resource: string; readonly seconds: number } | null;
  readonly caution: string | null;
}
