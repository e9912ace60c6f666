// The states of the cell's resources, each written once, as tables and charts show them.
import type { StateSpec } from "#engine/compiler/stepTable.ts";

export type StateKind = StateSpec["kind"];

export const stateNames = {
  recharging: "recharging",
  holdingShot: "holding a full shot",
  awaitingClosedMold: "waiting for the mold to close",
  valveShifting: "valve shifting",
  delivering: "delivering",
  awaitingEmptyChamber: "waiting for an empty chamber",
  extrudingParison: "extruding a parison",
  extrudingToRegrind: "extruding to regrind",
  heating: "heating",
  purging: "purging",

  neutral: "neutral",
  shifting: "shifting",

  awaitingShot: "waiting for melt",
  filling: "filling",

  awaitingMelt: "awaiting melt",
  awaitingTurn: "awaiting turn",
  awaitingValve: "awaiting valve",
  awaitingHeatUp: "awaiting heat-up",
  awaitingPurge: "awaiting purge",
  screwStopped: "screw stopped",
  valveStopped: "valve stopped",
  valveShiftingToStation: "valve shifting to it",
  parisonDrop: "parison drop",
  travelIn: "travel in",
  cut: "cut",
  travelOut: "travel out",
  closing: "closing",
  blowing: "blowing",
  cooling: "cooling",
  venting: "venting",
  opening: "opening",
  removal: "removal",
  awaitingTakeaway: "awaiting takeaway",
  beingCleared: "being cleared",
  changeover: "changeover",

  noOperatorFree: "no operator free",
  operatorOnTheWay: "operator on the way",

  starved: "starved",
  working: "working",
  blocked: "blocked",

  free: "free",
  removing: "removing",
  clearing: "clearing",
  repairing: "repairing",
  packing: "packing",
  walking: "walking",
  onBreak: "on break",

  stopped: "stopped",
  onShift: "on shift",
  offShift: "off shift",
} as const;

const toStation = "open to ";

/** The valve has a state of its own for each station. */
export const openTo = (station: string) => `${toStation}${station}` as const;
export const isOpenTo = (state: string): boolean => state.startsWith(toStation);

export type StateName = (typeof stateNames)[keyof typeof stateNames];
