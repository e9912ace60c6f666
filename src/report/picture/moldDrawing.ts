// A mold in section: two halves that move linearly, and the parisons or parts between them.
import { element, type Child } from "#report/charts/markup.ts";
import { filledPath } from "#report/charts/patterns.ts";
import type { SceneStation } from "#report/scene/scene.ts";
import { arrow } from "./arrow.ts";
import { parisonLength } from "./parison.ts";

export interface MoldSize {
  readonly height: number;
  /** Width of a half, and how far it stands from the parting plane when the mold is open. */
  readonly half: number;
  readonly gap: number;
  /** Width of a parison, and how far the next cavity is drawn beside it. */
  readonly tube: number;
  readonly stagger: number;
  /** More cavities are drawn as one, and counted in words. */
  readonly mostCavities: number;
}

export const rowMold: MoldSize = { height: 100, half: 36, gap: 31, tube: 11, stagger: 19, mostCavities: 3 };
export const cardMold: MoldSize = { height: 50, half: 16, gap: 14, tube: 6, stagger: 10, mostCavities: 2 };

/** The parting plane is at x, the top of the mold at y. */
export interface MoldPlace {
  readonly x: number;
  readonly y: number;
}

export function moldDrawing(id: string, station: SceneStation, at: MoldPlace, size: MoldSize): readonly Child[] {
  return [...held(id, station, at, size), ...halves(station, at, size), ...motion(station, at, size)];
}

/** How far a blown part reaches beyond its parison; cavities beside each other leave less room. */
function bulge(cavities: number, { tube, mostCavities }: MoldSize): number {
  return tube * (cavities === 1 || cavities > mostCavities ? 0.9 : 0.42);
}

/** Half of the width that all parisons of a mold take. */
export function bundle(cavities: number, size: MoldSize): number {
  return cavityOffsets(cavities, size).at(-1)! + size.tube / 2;
}

/** Cavities lie one behind the other; they are drawn beside each other, the last one first. */
function cavityOffsets(cavities: number, { stagger, mostCavities }: MoldSize): readonly number[] {
  const count = cavities > mostCavities ? 1 : cavities;
  return Array.from({ length: count }, (_, i) => (i - (count - 1) / 2) * stagger);
}

const share = (value: number): number => Math.max(0, Math.min(1, value));

/** Distance of each half from the parting plane. */
function halfDistance(closed: number, { gap }: MoldSize): number {
  return gap * (1 - share(closed));
}

function halves({ mold, cavities }: SceneStation, { x, y }: MoldPlace, size: MoldSize): readonly Child[] {
  const distance = halfDistance(mold.closed, size);
  const neck = bundle(cavities, size);
  const cavity = neck + bulge(cavities, size);
  return ([-1, 1] as const).map((side) =>
    element("path", {
      class: "steel half",
      d: halfOutline(x + side * distance, y, side, { ...size, neck: neck + 1, cavity }),
    }),
  );
}

interface HalfSize extends MoldSize {
  /** Depths from the parting face. */
  readonly neck: number;
  readonly cavity: number;
}

/** From the top of the parting face down its neck, cavity and pinch-off, and around the back. */
function halfOutline(face: number, y: number, side: -1 | 1, size: HalfSize): string {
  const { height, half, neck, cavity } = size;
  const at = (depth: number): string => (face + side * depth).toFixed(2);
  const down = (depth: number): string => (y + height * depth).toFixed(2);
  return (
    `M${at(neck)} ${down(0)}V${down(0.12)}L${at(cavity)} ${down(0.24)}V${down(0.76)}H${at(0)}` +
    `V${down(1)}H${at(half)}V${down(0)}Z`
  );
}

function held(id: string, station: SceneStation, at: MoldPlace, size: MoldSize): readonly Child[] {
  const { cavities, mold, progress } = station;
  const { content, air } = mold;
  if (content === "nothing") return [];
  if (content === "parison" && air === "none") return parisons(id, cavities, parisonLength(mold), at, size);
  const blown = air === "blowing" ? share(progress) : 1;
  return cavityOffsets(cavities, size).flatMap((offset) =>
    blownPart(id, station, { x: at.x + offset, y: at.y }, size, blown),
  );
}

/** One for each cavity; `length` is a share of the mold's height. */
export function parisons(
  id: string,
  cavities: number,
  length: number,
  { x, y }: MoldPlace,
  size: MoldSize,
): readonly Child[] {
  if (length <= 0) return [];
  const bottom = (y + size.height * length).toFixed(2);
  return cavityOffsets(cavities, size).map((offset) => {
    const [left, right] = [x + offset - size.tube / 2, x + offset + size.tube / 2];
    const d = `M${left} ${y}V${bottom}H${right}V${y}Z`;
    return element("g", { class: "tube" }, ...filledPath(id, "melt", d), element("path", { d, class: "edge" }));
  });
}

/** Blow air is a pattern inside the wall; it fills no gauge, since no pressure is known. */
function blownPart(
  id: string,
  { mold, cavities }: SceneStation,
  { x, y }: MoldPlace,
  size: MoldSize,
  blown: number,
): readonly Child[] {
  const neck = size.tube / 2;
  const body = neck + blown * bulge(cavities, size);
  const down = (height: number): string => (y + size.height * height).toFixed(2);
  const d =
    `M${x - neck} ${down(0)}V${down(0.12)}L${(x - body).toFixed(2)} ${down(0.24)}V${down(0.76)}` +
    `H${(x + body).toFixed(2)}V${down(0.24)}L${x + neck} ${down(0.12)}V${down(0)}Z`;
  const inside = mold.air === "none" ? [element("path", { d, class: "hollow" })] : filledPath(id, "air", d);
  return [element("g", { class: `blown ${mold.air}` }, ...inside, element("path", { d, class: "wall" }))];
}

/** Arrows on the halves say which way they move. */
function motion({ role, mold }: SceneStation, { x, y }: MoldPlace, size: MoldSize): readonly Child[] {
  if (role !== "mold.close" && role !== "mold.open") return [];
  const middle = halfDistance(mold.closed, size) + size.half / 2;
  const inward = role === "mold.close" ? 1 : -1;
  const length = size.half * 0.5;
  return [-1, 1].map((side) => {
    const direction = -side * inward;
    return arrow({ x: x + side * middle + (direction * length) / 2, y: y + size.height / 2 }, direction, length);
  });
}
