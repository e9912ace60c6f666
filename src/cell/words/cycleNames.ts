// The names by which every part of the program calls the resources and counters of a cell.

export const PLASTICATOR = "plasticator";
export const VALVE = "valve";
/** The ram of a common accumulator, and the one in a station's own head. */
export const RAM = "ram";
export const ramOf = (station: string): string => `ram of ${station}`;
/** What takes the parts of a station away beside its mold. */
export const maskOf = (station: string): string => `mask of ${station}`;

/** The station whose mask this is; undefined for what is no mask. */
export function maskedStation(name: string, stations: readonly { readonly name: string }[]): string | undefined {
  return stations.find((station) => maskOf(station.name) === name)?.name;
}

/** The step with which a shot is the mold's: a drop, or the cut from a die that never stops. */
export const shotSteps: readonly string[] = ["drop", "cut"];

export const headOf = (station: string): string => `head of ${station}`;

/** The station that a process or a resource is there for, such as `head of left`; undefined where it is there for all. */
export function stationServed(name: string, stations: readonly string[]): string | undefined {
  return stations.find((station) => [station, headOf(station), ramOf(station), maskOf(station)].includes(name));
}

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
/** Each stop as it begins, as its repair begins where that may have to wait, and as its repair ends. */
export const repairBeginsOf = (resource: string, stop: string): string => `repair begins ${stop} of ${resource}`;
export const stopBeginsOf = (resource: string, stop: string): string => `begins ${stop} of ${resource}`;
export const stopEndsOf = (resource: string, stop: string): string => `ends ${stop} of ${resource}`;
/** Drops begun, and molds closed on a parison. */
export const dropsOf = (station: string): string => `drops ${station}`;
export const closesOf = (station: string): string => `closes ${station}`;
/** Milligrams of melt purged. */
export const purgedCounter = "purged";
export const rechargesCounter = "recharges";

export function operatorNames(operators: number): readonly string[] {
  return Array.from({ length: operators }, (_, i) => `operator ${i + 1}`);
}
