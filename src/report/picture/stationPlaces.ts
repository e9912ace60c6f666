// Where the stations of a cell stand in a picture: in one row, or as cards in several rows.
import type { Scene } from "#report/scene/scene.ts";
import type { Box } from "#report/charts/patterns.ts";
import { dieOf, type MeltPlace } from "./meltPlace.ts";
import { cardMold, rowMold, type MoldSize } from "./moldDrawing.ts";
import { linePitch, plateHeight } from "./statePlate.ts";
import { levelPitch, portPlaces } from "./valveDrawing.ts";

export interface StationPlace extends Box {
  /** Parting plane of the mold at the blow position, top of its head, and top of the mold. */
  readonly middle: number;
  readonly head: number;
  readonly mold: number;
  /** Middle of the cooling clock, beside the way of a mold. */
  readonly clock: number;
  /** Lines of notes below the state. */
  readonly notes: number;
  readonly size: MoldSize;
  readonly isCard: boolean;
}

export interface CellPlaces {
  readonly stations: readonly StationPlace[];
  /** Top of the molds under the die; null where no mold travels. */
  readonly lane: number | null;
  readonly bottom: number;
}

type Kind = Scene["delivery"];

/** More stations than this are drawn as cards. */
export const longestRow = 5;

/** A mold on its way needs more room beside the others. */
const widestTravel = 280;
const mostColumns = 6;
const headHeight = { plain: 20, chamber: 66 } as const;
const cardHead = { plain: 12, chamber: 34 } as const;
/** Lines of notes in a column; a head adds its state and its melt. */
const notesOf = { plain: 3, chamber: 5 } as const;
/** Between two cards. */
const gap = 7;

export function cellPlaces(count: number, kind: Kind, melt: MeltPlace): CellPlaces {
  return count <= longestRow ? row(count, kind, melt) : cards(count, kind, melt);
}

function row(count: number, kind: Kind, melt: MeltPlace): CellPlaces {
  const { width } = melt;
  const widest = kind === "continuous" ? Math.max(widestTravel, melt.widestColumn) : melt.widestColumn;
  const column = Math.min(widest, width / count);
  const left = Math.max(0, Math.min(width - column * count, dieOf(melt) - (column * count) / 2));
  const middles = Array.from({ length: count }, (_, i) => left + (i + 0.5) * column);
  const lane = kind === "continuous" ? melt.dieBottom + 6 : null;
  const head = lane === null ? melt.bottom + channelsHeight(middles, melt) : lane + rowMold.height + 46;
  const form = kind === "accumulator-head" ? "chamber" : "plain";
  const notes = notesOf[form];
  const mold = lane === null ? head + headHeight[form] : head;
  const height = mold - head + rowMold.height + 26 + plateHeight + (notes + 2) * linePitch;
  const stations = middles.map((middle) => {
    const box = { x: middle - column / 2, y: head, width: column, height };
    const isRight = lane !== null && middle > dieOf(melt);
    const clock = isRight ? box.x + column - 18 : box.x + 18;
    return { ...box, middle, head, mold, clock, notes, size: rowMold, isCard: false };
  });
  return { stations, lane, bottom: head + height };
}

/** As many levels as there are channels on the busier side of the valve. */
function channelsHeight(middles: readonly number[], melt: MeltPlace): number {
  const ports = portPlaces(middles.length, melt);
  const left = middles.filter((x, i) => x < ports[i]!).length;
  return Math.max(left, middles.length - left) * levelPitch + 2;
}

function cards(count: number, kind: Kind, melt: MeltPlace): CellPlaces {
  const rows = Math.ceil(count / mostColumns);
  const columns = Math.ceil(count / rows);
  const column = melt.width / columns;
  const lane = kind === "continuous" ? melt.dieBottom + 6 : null;
  const top = (lane === null ? melt.bottom : lane + rowMold.height + 40) + 12;
  const head = kind === "accumulator-head" ? cardHead.chamber : cardHead.plain;
  const above = plateHeight + linePitch + 10;
  const height = above + head + cardMold.height + 6;
  const stations = Array.from({ length: count }, (_, i) => {
    const x = (i % columns) * column + gap / 2;
    const y = top + Math.floor(i / columns) * (height + gap);
    const headTop = y + above;
    const middle = x + cardMold.half + cardMold.gap + 2;
    const box = { x, y, width: column - gap, height };
    const clock = middle + cardMold.half + cardMold.gap + 13;
    return { ...box, middle, head: headTop, mold: headTop + head, clock, notes: 1, size: cardMold, isCard: true };
  });
  return { stations, lane, bottom: top + rows * (height + gap) };
}
