// The picture of the map: a box for each cell, with hue, pattern and words for the resource that sets the pace.
import type { CircuitOwner } from "#analysis/ideal/idealCircuit.ts";
import { chart, chartWidth, fittedWords, words } from "#report/charts/chart.ts";
import { element, type Child, type Markup } from "#report/charts/markup.ts";
import { filledBox } from "#report/charts/patterns.ts";
import { grouped, plainNumber } from "#report/words/digits.ts";
import type { Fill } from "#report/words/stateLook.ts";
import type { PaceCell } from "#page/trial/openPaceRow.ts";
import { mapWords, positionWords, type PaceGrid } from "./paceGrid.ts";

const fills: Readonly<Record<CircuitOwner["kind"] | "several", Fill>> = {
  screw: "melt",
  chambers: "regrind",
  valve: "shift",
  "die zone": "delivery",
  station: "cooling",
  stations: "cooling",
  mask: "air",
  masks: "air",
  crew: "removal",
  server: "extra",
  several: "setup",
};

const gutter = 150;
const top = 54;
const boxHeight = 64;

export function mapPicture(grid: PaceGrid): Markup {
  const { x, y, across, down, rows, simulated, at, units } = grid;
  const width = (chartWidth - gutter) / across.length;
  const title = `What sets the pace: ${x.name} across, ${y.name} down`;
  return chart(
    { id: "pace-map", title, description: mapWords(grid) },
    top + down.length * boxHeight + 4,
    words(fittedWords(y.name, gutter - 10), 0, 40, { style: "quiet" }),
    words(x.name, gutter, 14, { style: "quiet" }),
    ...across.map((place, i) =>
      words(fittedWords(positionWords(x, place, units), width - 6), gutter + (i + 0.5) * width, 40, {
        anchor: "middle",
      }),
    ),
    ...down.flatMap((place, i) => [
      words(fittedWords(positionWords(y, place, units), gutter - 10), 0, top + i * boxHeight + 33),
      ...across.flatMap((_, k) =>
        box(rows[i]?.[k], simulated[i]?.[k], {
          x: gutter + k * width,
          y: top + i * boxHeight,
          width,
          height: boxHeight,
        }),
      ),
    ]),
    element("rect", {
      x: gutter + at.x * width + 2,
      y: top + at.y * boxHeight + 2,
      width: width - 4,
      height: boxHeight - 4,
      class: "present",
    }),
  );
}

function box(
  cell: PaceCell,
  parts: number | undefined,
  { x, y, width, height }: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
): readonly Child[] {
  if (!cell) return [words("–", x + width / 2, y + 33, { anchor: "middle", style: "quiet" })];
  const fill = fills[cell.kind];
  const middle = x + width / 2;
  const number =
    cell.partsPerHour === null ? `${cell.secondsPerShot.toFixed(2)} s` : `${grouped(Math.round(cell.partsPerHour))} /h`;
  const style = `on ${fill}`;
  return [
    ...filledBox("pace-map", fill, { x, y, width, height }),
    words(number, middle, y + 22, { anchor: "middle", style }),
    words(fittedWords(cell.pace.join(" and "), width - 8), middle, y + 39, { anchor: "middle", style }),
    ...(parts === undefined
      ? []
      : [words(fittedWords(`run: ${plainNumber(parts)} /h`, width - 8), middle, y + 56, { anchor: "middle", style })]),
  ];
}
