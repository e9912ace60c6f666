// The names by which every part of the program calls the resources and counters of a cell.

export const PLASTICATOR = "plasticator";
export const VALVE = "valve";
/** The ram of a common accumulator, and the one in a station's own head. */
export const RAM = "ram";
export const ramOf = (station: string): string => `ram of ${station}`;
/** What takes the parts of a station away beside its mold. */
export const maskOf = (station: string): string => `mask of ${station}`;

export const headOf = (station: string): string => `head of ${station}`;

/** Counters that the cycle table raises: shots delivered and parts removed, for each station. */
export const shotsOf = (station: string): string => `shots ${station}`;
export const partsOf = (station: string): string => `parts ${station}`;
/** Shots whose drop was broken off, and shots lost on the way, those included. */
export const lostDropsOf = (station: string): string => `lost drops ${station}`;
export const lostShotsOf = (station: string): string => `lost shots ${station}`;
/** Parts refused at the mold, for each reason. */
export const rejectsOf = (station: string, reason: string): string => `rejects ${station}: ${reason}`;
/** Parts that a server has worked on, those that it refused, and those that passed the last one. */
export const refusedOf = (reason: string): string => `refused: ${reason}`;
export const goodCounter = "good parts";
/** Time on shift as a resource, for clocks that stand still off shift; no user can name anything so, and no table shows it. */
export const SHIFT = "(shift)";
/** Drops begun, and molds closed on a parison. */
export const dropsOf = (station: string): string => `drops ${station}`;
export const closesOf = (station: string): string => `closes ${station}`;
/** Walls that touch the mold, less their inflation where it is known, and molds that begin to open. */
export const contactsOf = (station: string): string => `contacts ${station}`;
export const opensOf = (station: string): string => `opens ${station}`;
/** Milligrams of melt purged. */
export const purgedCounter = "purged";
export const rechargesCounter = "recharges";

/** Operators are numbered from 0, and named from 1. */
export const operatorName = (number: number): string => `operator ${number + 1}`;

export function operatorNames(operators: number): readonly string[] {
  return Array.from({ length: operators }, (_, number) => operatorName(number));
}
