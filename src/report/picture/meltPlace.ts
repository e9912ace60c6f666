// Where the screw, the valve and their words stand in a picture.

export interface MeltPlace {
  /** Back end of the barrel and its nozzle. */
  readonly back: number;
  readonly nozzle: number;
  /** Length of the stroke that holds the capacity of the screw. */
  readonly stroke: number;
  /** Middle of the valve, or of the die in continuous extrusion. */
  readonly valve: number;
  readonly screwWords: Words;
  readonly valveWords: Words;
  readonly ramWords: Words;
  /** The shot, enlarged. */
  readonly inset: Words;
}

interface Words {
  readonly x: number;
  readonly y: number;
  readonly width: number;
}

/** Walls of the barrel, and the level at which melt leaves it. */
export const barrel = { top: 56, bottom: 92, axis: 74 } as const;

/** Below it everything belongs to channels and molds. */
export const meltBottom = 122;

export const wideMelt: MeltPlace = {
  back: 150,
  nozzle: 392,
  stroke: 110,
  valve: 430,
  screwWords: { x: 150, y: 0, width: 242 },
  valveWords: { x: 480, y: 0, width: 150 },
  ramWords: { x: 650, y: 0, width: 140 },
  inset: { x: 480, y: 62, width: 220 },
};

export const phoneMelt: MeltPlace = {
  back: 112,
  nozzle: 278,
  stroke: 76,
  valve: 306,
  screwWords: { x: 112, y: 0, width: 166 },
  valveWords: { x: 0, y: 142, width: 150 },
  ramWords: { x: 0, y: 246, width: 150 },
  inset: { x: 0, y: 200, width: 130 },
};
