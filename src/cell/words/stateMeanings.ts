// What each state of the cell's resources means, what it waits for, and the caution that belongs to it.
import type { StateKind, StateName } from "./stateNames.ts";

export interface StateMeaning {
  /** The resources that may be in it. */
  readonly of: string;
  readonly kind: StateKind;
  readonly meaning: string;
  /** What a waiting resource lacks; in continuous extrusion the same words may mean something else. */
  readonly cause?: string;
  readonly causeInContinuous?: string;
  /** What makes the wait shorter. */
  readonly shorter?: string;
  readonly caution?: string;
}

const lockout = "Lock out all stored energy before anybody reaches into the machine.";
const guards = "Moving mold halves crush: gates and interlocks stay in use.";
const pressure = "The mold is under pressure and stays closed.";
const hotMelt = "Hot melt leaves the die: stay clear of it.";
const screw = "screw";
const station = "station";
const operator = "operator";

export const stateMeanings: Readonly<Record<StateName, StateMeaning>> = {
  recharging: { of: screw, kind: "working", meaning: "The screw makes melt ready for the next shot." },
  "holding a full shot": {
    of: "screw or ram",
    kind: "waiting",
    meaning:
      "The shot is full, and no mold is open and empty to take it. The screw is faster than the molds, so it waits.",
    cause: "no mold open and empty",
    shorter: "Add a station, or shorten the cycle of the molds. A slower screw waits less but makes no more.",
    caution: "The melt ages while it waits; see `time at heat`.",
  },
  "waiting for the mold to close": {
    of: screw,
    kind: "waiting",
    meaning: "The valve is in neutral, but the recharge starts only when the mold just filled has closed.",
    cause: "the mold just filled is not closed yet",
    shorter: "Close faster, or write `rechargeStarts: valve-neutral` where the machine can do so.",
  },
  "valve shifting": { of: "screw or ram", kind: "working", meaning: "The valve shifts; screw or ram stand for that." },
  delivering: { of: "screw or ram", kind: "working", meaning: "The shot is pushed out through the valve." },
  "waiting for an empty chamber": {
    of: screw,
    kind: "waiting",
    meaning: "The head that is next to be filled still delivers its shot.",
    cause: "the head that is next still delivers",
    shorter: "Drop faster, or use a slower screw.",
  },
  "extruding a parison": { of: screw, kind: "working", meaning: "A parison grows at the die." },
  "extruding to regrind": {
    of: screw,
    kind: "waiting",
    meaning: "The parison is full and no mold has come: the melt becomes a longer tail, which goes to regrind.",
    cause: "no mold is under the die",
    shorter: "Turn the screw down (`rate: matched`), or shorten the cycle of the molds.",
  },
  heating: { of: screw, kind: "working", meaning: "Barrel and heads are heated after a rest (`startUp.heatUp`)." },
  purging: {
    of: screw,
    kind: "working",
    meaning: "Old melt is driven out at a start-up or a change of material or color.",
    caution: hotMelt,
  },
  neutral: {
    of: "selector valve",
    kind: "waiting",
    meaning: "The valve blocks every port.",
    cause: "no shot to deliver",
  },
  shifting: { of: "selector valve", kind: "working", meaning: "The valve shifts between neutral and a port." },
  "waiting for melt": {
    of: "ram of an accumulator",
    kind: "waiting",
    meaning: "The chamber has no full shot, and the screw does not fill it yet.",
    cause: "the screw has not made its shot yet",
    shorter: "Use a faster screw.",
  },
  filling: { of: "ram of an accumulator", kind: "working", meaning: "The screw fills the chamber." },
  "awaiting melt": {
    of: station,
    kind: "waiting",
    meaning: "The mold is open and empty, and the shot or parison is not full yet.",
    cause: "the shot is not full yet",
    causeInContinuous: "the parison has not its full length yet",
    shorter: "Use a faster screw or smaller shots; with fewer stations each waits less.",
  },
  "awaiting turn": {
    of: station,
    kind: "waiting",
    meaning: "The mold is ready, and another station is served first.",
    cause: "the shot is full and another station's turn",
    causeInContinuous: "another mold is at the die",
    shorter: "Change `valve.dispatch`, or use a faster screw.",
  },
  "awaiting valve": {
    of: station,
    kind: "waiting",
    meaning: "The shot is full and the mold is ready, but the valve is not yet back in neutral.",
    cause: "the valve is not back in neutral",
    shorter: "Shift the valve faster.",
  },
  "valve shifting to it": { of: station, kind: "working", meaning: "The valve shifts to the station's port." },
  "parison drop": { of: station, kind: "working", meaning: "The parison drops between the open mold halves." },
  "travel in": {
    of: station,
    kind: "working",
    meaning: "The mold travels under the die (continuous).",
    caution: guards,
  },
  cut: { of: station, kind: "working", meaning: "The parison is cut off (continuous)." },
  "travel out": {
    of: station,
    kind: "working",
    meaning: "The mold travels from the die to the blow station (continuous).",
    caution: guards,
  },
  closing: {
    of: station,
    kind: "working",
    meaning: "The mold closes on the parison, lock-up included.",
    caution: guards,
  },
  blowing: { of: station, kind: "working", meaning: "Blow air inflates the parison.", caution: pressure },
  cooling: {
    of: station,
    kind: "working",
    meaning: "The part cools against the mold under blow pressure; usually the longest step.",
    caution: pressure,
  },
  venting: {
    of: station,
    kind: "working",
    meaning: "The blow pressure falls before the mold opens.",
    caution: "The mold must not open under pressure. A computed vent time is never a safe limit.",
  },
  opening: { of: station, kind: "working", meaning: "The mold opens.", caution: guards },
  "awaiting removal": {
    of: station,
    kind: "waiting",
    meaning: "The mold is open, and the parts wait for an operator.",
    cause: "no operator is free",
    shorter: "Add an operator, or remove by machine.",
  },
  removal: { of: station, kind: "working", meaning: "The parts leave the open mold." },
  "awaiting takeaway": {
    of: "station or mask",
    kind: "waiting",
    meaning: "The parts are ready to leave, and what comes after the mold has no room for them.",
    cause: "no room after the mold",
    shorter: "Add places or buffer to the first server of the takeaway, or make it faster.",
  },
  "being cleared": {
    of: station,
    kind: "working",
    meaning: "A lost shot is taken out of the open mold.",
    caution: lockout,
  },
  changeover: {
    of: "station or screw",
    kind: "working",
    meaning: "Mold, material or color are changed (`changes`).",
    caution: lockout,
  },
  starved: {
    of: "server or mask",
    kind: "waiting",
    meaning: "The server is free and no part has come.",
    cause: "no parts have come",
  },
  working: { of: "server or mask", kind: "working", meaning: "The server works on a part." },
  blocked: {
    of: "server",
    kind: "waiting",
    meaning: "The part is done, and the next server has no room for it.",
    cause: "no room at the next server",
    shorter: "Add places or buffer to the next server, or make it faster.",
  },
  "awaiting an operator": {
    of: "server",
    kind: "waiting",
    meaning: "A part waits at the server for an operator.",
    cause: "no operator is free",
    shorter: "Add an operator.",
  },
  free: { of: operator, kind: "waiting", meaning: "The operator has nothing to do.", cause: "no parts to take out" },
  removing: { of: operator, kind: "working", meaning: "The operator takes parts out of a mold.", caution: guards },
  clearing: {
    of: operator,
    kind: "working",
    meaning: "The operator takes a lost shot out of a mold.",
    caution: lockout,
  },
  repairing: { of: operator, kind: "working", meaning: "The operator repairs a machine stop.", caution: lockout },
  packing: { of: operator, kind: "working", meaning: "The operator works at a server of the takeaway." },
  walking: { of: operator, kind: "working", meaning: "The operator walks from one place of work to another." },
  "on break": { of: operator, kind: "off", meaning: "A break of the work shift." },
  stopped: {
    of: "any machine",
    kind: "stopped",
    meaning: "A machine stop holds the resource until its repair ends.",
    caution: lockout,
  },
  "on shift": { of: "the calendar", kind: "working", meaning: "A work shift is on." },
  "off shift": { of: "any resource", kind: "off", meaning: "No work shift is on: nothing is planned." },
};
