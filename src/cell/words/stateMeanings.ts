// What each state of the cell's resources means, what it waits for, and the caution that belongs to it.
import { stateNames, type StateKind, type StateName } from "./stateNames.ts";

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

const lockout = "Lock out all stored energy before you reach into the machine.";
const guards = "Moving mold halves crush: gates and interlocks stay in use.";
const pressure = "The mold is under pressure and stays closed.";
const hotMelt = "Hot melt leaves the die: stay clear of it.";
const screw = "screw";
const station = "station";
const operator = "operator";

export const stateMeanings: Readonly<Record<StateName, StateMeaning>> = {
  [stateNames.recharging]: { of: screw, kind: "working", meaning: "The screw makes melt ready for the next shot." },
  [stateNames.holdingShot]: {
    of: "screw or ram",
    kind: "waiting",
    meaning:
      "The shot is full, and no mold is open and empty to take it. The screw is faster than the molds, so it waits.",
    cause: "no mold open and empty",
    shorter: "Add a station, or shorten the cycle of the molds. A slower screw waits less but makes no more.",
    caution: "The melt ages while it waits; see `time at heat`.",
  },
  [stateNames.awaitingClosedMold]: {
    of: screw,
    kind: "waiting",
    meaning: "The valve is in neutral, but the recharge starts only when the mold just filled has closed.",
    cause: "the mold just filled is not closed yet",
    shorter: "Close faster, or write `rechargeStarts: valve-neutral` where the machine can do so.",
  },
  [stateNames.valveShifting]: {
    of: "screw or ram",
    kind: "working",
    meaning: "The valve shifts; screw or ram stand for that.",
  },
  [stateNames.delivering]: {
    of: "screw or ram",
    kind: "working",
    meaning: "The shot is pushed out through the valve.",
  },
  [stateNames.awaitingEmptyChamber]: {
    of: screw,
    kind: "waiting",
    meaning: "The head that is next to be filled still delivers its shot.",
    cause: "the head that is next still delivers",
    shorter: "Drop faster, or use a slower screw.",
  },
  [stateNames.extrudingParison]: { of: screw, kind: "working", meaning: "A parison grows at the die." },
  [stateNames.extrudingToRegrind]: {
    of: screw,
    kind: "waiting",
    meaning: "The parison is full and no mold has come: the melt becomes a longer tail, which goes to regrind.",
    cause: "no mold is under the die",
    shorter: "Turn the screw down (`rate: matched`), or shorten the cycle of the molds.",
  },
  [stateNames.heating]: {
    of: screw,
    kind: "set-up",
    meaning: "Barrel and heads are heated after a rest (`startUp.heatUp`).",
  },
  [stateNames.purging]: {
    of: screw,
    kind: "set-up",
    meaning: "Old melt is driven out at a start-up or a change of material or color.",
    caution: hotMelt,
  },
  [stateNames.neutral]: {
    of: "selector valve",
    kind: "waiting",
    meaning: "The valve blocks every port.",
    cause: "no shot to deliver",
  },
  [stateNames.shifting]: {
    of: "selector valve",
    kind: "working",
    meaning: "The valve shifts between neutral and a port.",
  },
  [stateNames.awaitingShot]: {
    of: "ram of an accumulator",
    kind: "waiting",
    meaning: "The chamber has no full shot, and the screw does not fill it yet.",
    cause: "the screw has not made its shot yet",
    shorter: "Use a faster screw.",
  },
  [stateNames.filling]: { of: "ram of an accumulator", kind: "working", meaning: "The screw fills the chamber." },
  [stateNames.awaitingMelt]: {
    of: station,
    kind: "waiting",
    meaning: "The mold is open and empty, and the shot or parison is not full yet.",
    cause: "the shot is not full yet",
    causeInContinuous: "the parison has not its full length yet",
    shorter: "Use a faster screw or smaller shots; with fewer stations each waits less.",
  },
  [stateNames.awaitingTurn]: {
    of: station,
    kind: "waiting",
    meaning: "The mold is ready, and another station is served first.",
    cause: "the shot is full and another station's turn",
    causeInContinuous: "another mold is at the die",
    shorter: "Change `valve.dispatch`, or use a faster screw.",
  },
  [stateNames.awaitingValve]: {
    of: station,
    kind: "waiting",
    meaning: "The shot is full and the mold is ready, but the valve is not yet back in neutral.",
    cause: "the valve is not back in neutral",
    shorter: "Shift the valve faster.",
  },
  [stateNames.awaitingHeatUp]: {
    of: station,
    kind: "set-up",
    meaning: "The station waits for melt, and the screw heats up.",
    cause: "the screw heats up",
    shorter: "Heat up before the shift begins, or shorten `startUp.heatUp`.",
  },
  [stateNames.awaitingPurge]: {
    of: station,
    kind: "set-up",
    meaning: "The station waits for melt, and the screw is purged.",
    cause: "the screw is purged",
    shorter: "Purge less mass.",
  },
  [stateNames.screwStopped]: {
    of: station,
    kind: "waiting",
    meaning: "The station waits for its shot, and the screw is stopped.",
    cause: "the screw is stopped",
    shorter: "See `stops.csv`: fewer stops of the screw, or shorter repairs.",
  },
  [stateNames.valveStopped]: {
    of: station,
    kind: "waiting",
    meaning: "The station waits for its shot, and the valve is stopped.",
    cause: "the valve is stopped",
    shorter: "See `stops.csv`: fewer stops of the valve, or shorter repairs.",
  },
  [stateNames.valveShiftingToStation]: {
    of: station,
    kind: "working",
    meaning: "The valve shifts to the station's port.",
  },
  [stateNames.parisonDrop]: {
    of: station,
    kind: "working",
    meaning: "The parison drops between the open mold halves.",
  },
  [stateNames.travelIn]: {
    of: station,
    kind: "working",
    meaning: "The mold travels under the die (continuous).",
    caution: guards,
  },
  [stateNames.cut]: { of: station, kind: "working", meaning: "The parison is cut off (continuous)." },
  [stateNames.travelOut]: {
    of: station,
    kind: "working",
    meaning: "The mold travels from the die to the blow station (continuous).",
    caution: guards,
  },
  [stateNames.closing]: {
    of: station,
    kind: "working",
    meaning: "The mold closes on the parison, lock-up included.",
    caution: guards,
  },
  [stateNames.blowing]: { of: station, kind: "working", meaning: "Blow air inflates the parison.", caution: pressure },
  [stateNames.cooling]: {
    of: station,
    kind: "working",
    meaning: "The part cools against the mold under blow pressure; usually the longest step.",
    caution: pressure,
  },
  [stateNames.venting]: {
    of: station,
    kind: "working",
    meaning: "The blow pressure falls before the mold opens.",
    caution: "The mold must not open under pressure. A computed vent time is never a safe limit.",
  },
  [stateNames.opening]: { of: station, kind: "working", meaning: "The mold opens.", caution: guards },
  [stateNames.noOperatorFree]: {
    of: "station or server",
    kind: "waiting",
    meaning: "An operator is called, and all are busy elsewhere, on a break or off shift.",
    cause: "no operator is free",
    shorter: "Add an operator, or do the task by machine.",
  },
  [stateNames.operatorOnTheWay]: {
    of: "station or server",
    kind: "waiting",
    meaning: "The operator who was called walks to the task.",
    cause: "the operator walks to it",
    shorter: "Shorten the walk, or let each operator work at one place.",
  },
  [stateNames.removal]: { of: station, kind: "working", meaning: "The parts leave the open mold." },
  [stateNames.awaitingTakeaway]: {
    of: "station or mask",
    kind: "waiting",
    meaning: "The parts are ready to leave, and what comes after the mold has no room for them.",
    cause: "no room after the mold",
    shorter: "Add places or buffer to the first server of the takeaway, or make it faster.",
  },
  [stateNames.beingCleared]: {
    of: station,
    kind: "working",
    meaning: "A lost shot is cleared from the open mold.",
    caution: lockout,
  },
  [stateNames.changeover]: {
    of: "station or screw",
    kind: "set-up",
    meaning: "Mold, material or color are changed (`changes`).",
    caution: lockout,
  },
  [stateNames.starved]: {
    of: "server or mask",
    kind: "waiting",
    meaning: "The server is free and no part has come.",
    cause: "no parts have come",
  },
  [stateNames.working]: { of: "server or mask", kind: "working", meaning: "The server works on a part." },
  [stateNames.blocked]: {
    of: "server",
    kind: "waiting",
    meaning: "The part is done, and the next server has no room for it.",
    cause: "no room at the next server",
    shorter: "Add places or buffer to the next server, or make it faster.",
  },
  [stateNames.free]: {
    of: operator,
    kind: "waiting",
    meaning: "The operator has nothing to do.",
    cause: "no parts to remove",
  },
  [stateNames.removing]: {
    of: operator,
    kind: "working",
    meaning: "The operator takes parts out of a mold.",
    caution: guards,
  },
  [stateNames.clearing]: {
    of: operator,
    kind: "working",
    meaning: "The operator takes a lost shot out of a mold.",
    caution: lockout,
  },
  [stateNames.repairing]: {
    of: operator,
    kind: "working",
    meaning: "The operator repairs a machine stop.",
    caution: lockout,
  },
  [stateNames.packing]: { of: operator, kind: "working", meaning: "The operator works at a server of the takeaway." },
  [stateNames.walking]: {
    of: operator,
    kind: "working",
    meaning: "The operator walks from one place of work to another.",
  },
  [stateNames.onBreak]: { of: operator, kind: "off", meaning: "A break of the work shift." },
  [stateNames.stopped]: {
    of: "any machine",
    kind: "stopped",
    meaning: "A machine stop holds the resource until its repair ends.",
    caution: lockout,
  },
  [stateNames.onShift]: { of: "the calendar", kind: "working", meaning: "A work shift is on." },
  [stateNames.offShift]: { of: "any resource", kind: "off", meaning: "No work shift is on: nothing is planned." },
};
