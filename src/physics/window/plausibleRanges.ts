// Ranges of common practice that warn of typing errors; they are never defaults.

export interface PlausibleRange {
  readonly quantity: string;
  /** SI, shares as fractions. */
  readonly low: number;
  readonly high: number;
  readonly unit: "s" | "m" | "1" | "Pa";
  readonly source: string;
}

const COMMON_PRACTICE = "common practice, no published source";

function usual(quantity: string, low: number, high: number, unit: PlausibleRange["unit"]): PlausibleRange {
  return { quantity, low, high, unit, source: COMMON_PRACTICE };
}

export const plausibleRanges = {
  coolingShare: usual("cooling share of the cycle", 0.6, 0.8, "1"),
  screwDrop: usual("parison drop of a reciprocating screw", 1, 3, "s"),
  accumulatorDrop: usual("parison drop of an accumulator head", 2, 6, "s"),
  closeAndOpen: usual("close and open together", 1.5, 3, "s"),
  vent: usual("vent", 0.5, 1.5, "s"),
  removal: usual("removal", 0.5, 1, "s"),
  dieGap: usual("die gap", 0.8e-3, 3e-3, "m"),
  /** Of the part, not of all that is extruded: 30 % of the extruded mass is 43 % of the part. Many parts are between these two. */
  simpleFlash: usual("flash of a simple round part, of part", 0.1, 0.15, "1"),
  handleFlash: usual("flash of a part with a handle, of part", 0.25, 0.45, "1"),
  rejects: usual("rejects", 0.01, 0.05, "1"),
  blowPressure: {
    ...usual("blow pressure", 350e3, 700e3, "Pa"),
    source: "from memory of Kalpakjian & Schmid, Manufacturing Engineering and Technology, section on blow molding",
  },
} as const satisfies Readonly<Record<string, PlausibleRange>>;
