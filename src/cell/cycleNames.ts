// The names by which every part of the program calls the resources and counters of a cell.

export const PLASTICATOR = "plasticator";
export const VALVE = "valve";

/** Counters that the cycle table raises: shots delivered and parts removed, for each station. */
export const shotsOf = (station: string): string => `shots ${station}`;
export const partsOf = (station: string): string => `parts ${station}`;
/** Drops begun, and molds closed on a parison. */
export const dropsOf = (station: string): string => `drops ${station}`;
export const closesOf = (station: string): string => `closes ${station}`;
export const rechargesCounter = "recharges";

export function operatorNames(operators: number): readonly string[] {
  return Array.from({ length: operators }, (_, i) => `operator ${i + 1}`);
}
