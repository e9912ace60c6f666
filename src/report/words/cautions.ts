// The safety cautions under every answer and on every report.

/** Titles only, without a claim of compliance. */
export const cautions =
  "Computed times are never safe limits: blow pressure is vented before a mold opens, gates and interlocks stay in use, stored " +
  "energy is locked out. Local codes, the machine's manual and licensed, qualified people come first (EN 422:2009, " +
  "ANSI/PLASTICS B151.31-2014 (R2020), 29 CFR 1910.147 lockout/tagout, 1910.212 guards, 1910.219).";

/** For the terminal; no line is wider than 80 columns. */
export const shortCautions: readonly string[] = [
  "Safety: computed times are never safe limits. Local codes, the machine's manual",
  "and licensed, qualified people come first. Full text: blowcell explain safety",
];
