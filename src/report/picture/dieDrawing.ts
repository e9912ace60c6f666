// Continuous extrusion: the die, the parison that grows at it, and the molds on their way.
import { words } from "#report/charts/chart.ts";
import { element, type Child } from "#report/charts/markup.ts";
import type { Scene } from "#report/scene/scene.ts";
import { barrel, dieOf, type MeltPlace } from "./meltPlace.ts";
import { bundle, moldDrawing, parisons, rowMold, type MoldPlace } from "./moldDrawing.ts";
import { parisonHeight } from "./parison.ts";
import type { StationPlace } from "./stationPlaces.ts";

/** The parison hangs in the mold that stands under the die, else alone. */
export function dieDrawing(id: string, scene: Scene, melt: MeltPlace, lane: number): readonly Child[] {
  const x = dieOf(melt);
  const { cavities } = scene.stations[0]!;
  const lip = bundle(cavities, rowMold) + 3;
  const body = Math.max(20, lip + 3);
  const d = `M${x - body} ${barrel.top}H${x + body}V${lane - 22}L${x + lip} ${lane - 2}H${x - lip}L${x - body} ${lane - 22}Z`;
  const hasMold = scene.stations.some(
    ({ mold }) => mold.travel !== null && mold.travel <= 0 && mold.content !== "nothing",
  );
  const length = hasMold ? 0 : parisonHeight(scene.screw.parison ?? 0);
  return [
    element("path", { d, class: "steel" }),
    words("die", x + body + 8, barrel.axis + 4, { style: "quiet" }),
    ...parisons(id, cavities, length, { x, y: lane }, rowMold),
  ];
}

/** With more stations a mold would cross others, so that the middle of its way is not drawn. */
const mostDrawnWays = 2;

/** How far a mold is drawn away from the end of a way whose middle is not drawn. */
const shortWay = 40;

export function travelingMolds(
  id: string,
  { stations }: Scene,
  places: readonly StationPlace[],
  melt: MeltPlace,
  lane: number,
): readonly Child[] {
  return stations.flatMap((station, i) => {
    const { travel } = station.mold;
    if (travel === null || travel >= 1) return [];
    const under = { x: dieOf(melt), y: lane };
    const at =
      stations.length > mostDrawnWays ? atAnEnd(travel, places[i]!, under) : onTheWay(travel, places[i]!, under);
    return at === null ? [] : moldDrawing(id, station, at, rowMold);
  });
}

/** Down from the die, so that no half passes the parison, and then aside. */
function onTheWay(travel: number, { middle, mold }: StationPlace, under: MoldPlace): MoldPlace {
  const down = mold - under.y;
  const aside = middle - under.x;
  const way = travel * (down + Math.abs(aside));
  if (way <= down) return { x: under.x, y: under.y + way };
  return { x: under.x + Math.sign(aside) * (way - down), y: mold };
}

/** Cards have no room for the second half. */
function atAnEnd(travel: number, { middle, mold, isCard }: StationPlace, under: MoldPlace): MoldPlace | null {
  if (travel < 0.5) return { x: under.x, y: under.y + 2 * travel * shortWay };
  return isCard ? null : { x: middle, y: mold - 2 * (1 - travel) * shortWay };
}
