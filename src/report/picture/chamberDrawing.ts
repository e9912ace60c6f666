// The chamber of an accumulator, with its ram above the melt.
import { line } from "#report/charts/chart.ts";
import { element, type Child } from "#report/charts/markup.ts";
import { filledBox, type Box } from "#report/charts/patterns.ts";
import type { SceneRam } from "#report/scene/scene.ts";
import { shotOfCapacity } from "./screwDrawing.ts";

/** The ram stands on the melt; a line marks the full shot. */
export function chamberDrawing(id: string, { melt }: SceneRam, box: Box): readonly Child[] {
  const { x, y, width, height } = box;
  // Without a capacity the chamber holds one shot.
  const full = melt.capacityGrams === null ? 1 : shotOfCapacity(melt);
  const plate = 5;
  const room = height - plate;
  const level = room * Math.min(1, melt.share * full);
  const top = y + height - level;
  const mark = y + height - room * full;
  return [
    element("rect", { x: x - 3, y, width: width + 6, height, class: "steel" }),
    element("rect", { x, y, width, height, class: "inside" }),
    element("g", { class: "gathered" }, ...filledBox(id, "melt", { x, y: top, width, height: level })),
    element("rect", { x, y: top - plate, width, height: plate, class: "ram" }),
    element("rect", {
      x: x + width / 2 - 2,
      y: y - 4,
      width: 4,
      height: Math.max(0, top - plate - y + 4),
      class: "ram",
    }),
    line(x - 6, mark, x + width + 6, mark, "set-point"),
  ];
}
