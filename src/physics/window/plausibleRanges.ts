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

/** Heaviest part of each size, kg. */
const heaviest = { "small bottle": 0.025, bottle: 0.25, canister: 1.5, drum: Infinity } as const;

type PartSize = keyof typeof heaviest;

/** A range that depends on the part: a drum moves, drops and cools more slowly than a bottle. */
export interface SizedRange extends Pick<PlausibleRange, "quantity" | "unit" | "source"> {
  readonly bySize: Readonly<Record<PartSize, readonly [low: number, high: number]>>;
}

function sized(quantity: string, unit: "s" | "1", bySize: SizedRange["bySize"]): SizedRange {
  return { quantity, unit, source: COMMON_PRACTICE, bySize };
}

export const sizedRanges = {
  coolingShare: sized("cooling share of the cycle", "1", {
    "small bottle": [0.5, 0.8],
    bottle: [0.6, 0.8],
    canister: [0.6, 0.8],
    drum: [0.6, 0.9],
  }),
  screwDrop: sized("parison drop of a reciprocating screw", "s", {
    "small bottle": [0.5, 3],
    bottle: [1, 3],
    canister: [1, 5],
    drum: [2, 6],
  }),
  accumulatorDrop: sized("parison drop of an accumulator head", "s", {
    "small bottle": [1, 3],
    bottle: [1, 5],
    canister: [2, 6],
    drum: [2, 10],
  }),
  closeAndOpen: sized("close and open together", "s", {
    "small bottle": [1, 3],
    bottle: [1.5, 3],
    canister: [2, 5],
    drum: [3, 10],
  }),
  vent: sized("vent", "s", {
    "small bottle": [0.5, 1.5],
    bottle: [0.5, 1.5],
    canister: [0.5, 3],
    drum: [1, 10],
  }),
  removal: sized("removal", "s", {
    "small bottle": [0.5, 1],
    bottle: [0.5, 1],
    canister: [1, 5],
    drum: [3, 20],
  }),
  removalByOperator: sized("removal by an operator", "s", {
    "small bottle": [1, 8],
    bottle: [1, 8],
    canister: [2, 10],
    drum: [3, 30],
  }),
} as const satisfies Readonly<Record<string, SizedRange>>;

/** Of a part of this mass in kg; over all sizes where the mass is unknown. */
export function rangeOfPart(
  { bySize }: SizedRange,
  partMass: number | undefined,
): Pick<PlausibleRange, "low" | "high"> {
  const sizes = Object.keys(heaviest) as readonly PartSize[];
  const own = partMass === undefined ? undefined : sizes.find((size) => partMass <= heaviest[size]);
  const ranges = own === undefined ? Object.values(bySize) : [bySize[own]];
  return { low: Math.min(...ranges.map(([low]) => low)), high: Math.max(...ranges.map(([, high]) => high)) };
}
