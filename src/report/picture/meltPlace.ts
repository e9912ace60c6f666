// Where the screw, the valve and their words stand in a picture.
import type { Place } from "./statePlate.ts";

export interface MeltPlace {
  /** Of the whole picture. */
  readonly width: number;
  /** Back end of the barrel and its nozzle. */
  readonly back: number;
  readonly nozzle: number;
  /** Length of the stroke that holds the capacity of the screw. */
  readonly stroke: number;
  /** Left end of the valve, which has room for one port at least; its middle is the die in continuous extrusion. */
  readonly valve: number;
  readonly screwWords: Place;
  readonly massWords: Place;
  readonly valveWords: Place;
  readonly ramWords: Place;
  /** The shot, enlarged. */
  readonly inset: Place;
  /** Below it everything belongs to channels and molds. */
  readonly bottom: number;
  /** The same in continuous extrusion, which has neither valve nor shot. */
  readonly dieBottom: number;
  readonly widestColumn: number;
}

/** Walls of the barrel, and the level at which melt leaves it. */
export const barrel = { top: 56, bottom: 92, axis: 74 } as const;

export const narrowestValve = 40;

export function dieOf({ valve }: MeltPlace): number {
  return valve + narrowestValve / 2;
}

/** A few stations need less width, so that all words are larger. */
export const shortMelt: MeltPlace = {
  width: 720,
  back: 150,
  nozzle: 384,
  stroke: 110,
  valve: 426,
  screwWords: { x: 194, y: 0, width: 186 },
  massWords: { x: 110, y: 96, width: 316 },
  valveWords: { x: 496, y: 0, width: 214 },
  ramWords: { x: 520, y: 54, width: 190 },
  inset: { x: 520, y: 62, width: 190 },
  bottom: 136,
  dieBottom: 136,
  widestColumn: 240,
};

export const wideMelt: MeltPlace = {
  width: 960,
  back: 150,
  nozzle: 384,
  stroke: 110,
  valve: 426,
  screwWords: { x: 194, y: 0, width: 186 },
  massWords: { x: 110, y: 96, width: 316 },
  valveWords: { x: 480, y: 0, width: 210 },
  ramWords: { x: 716, y: 0, width: 200 },
  inset: { x: 716, y: 4, width: 200 },
  bottom: 136,
  dieBottom: 136,
  widestColumn: 240,
};

/** The words of screw and valve stand below them. */
export const phoneMelt: MeltPlace = {
  width: 360,
  back: 100,
  nozzle: 232,
  stroke: 64,
  valve: 276,
  screwWords: { x: 4, y: 140, width: 136 },
  massWords: { x: 4, y: 96, width: 286 },
  valveWords: { x: 150, y: 140, width: 128 },
  ramWords: { x: 4, y: 194, width: 136 },
  inset: { x: 4, y: 198, width: 136 },
  bottom: 262,
  dieBottom: 190,
  widestColumn: 360,
};
