// The places of the cell's table that more than one file names.

/** Free operators, one token each. */
export const OPERATORS = "operators";
/** A shot that is ready, a valve that is free, and one that has delivered. */
export const FULL_SHOT = "full shot";
export const FREE_VALVE = "valve";
export const VALVE_TO_SHIFT_BACK = "valve to be shifted back";

/** What a station needs to begin a cycle, and the screw to begin anything. */
export const mayStart = (station: string): string => `${station} may start`;
export const SCREW_MAY_WORK = "screw may work";
export const lastPartsOut = (station: string): string => `last parts out of ${station}`;

/** What lies before a server, and the room for it. */
export const partsBefore = (server: string): string => `parts before ${server}`;
export const roomBefore = (server: string): string => `room before ${server}`;
