// Continuous extrusion: the die, the parison that grows at it, and the molds on their way.
import { words } from "#report/charts/chart.ts";
import { element, type Child } from "#report/charts/markup.ts";
import type { Scene, SceneStation } from "#report/scene/scene.ts";
import { barrel, dieOf, type MeltPlace } from "./meltPlace.ts";
import { bundle, moldDrawing, parisons, rowMold } from "./moldDrawing.ts";
import { parisonHeight } from "./parison.ts";
import type { StationPlace } from "./stationPlaces.ts";

/** A mold leaves the die along the lane, and then goes down to its blow position. */
const alongLane = 0.7;

const isAway = ({ mold }: SceneStation): boolean => mold.travel !== null && mold.travel < 1;

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

/** Cards have no way down: there a mold stays in the lane until it has arrived. */
export function travelingMolds(
  id: string,
  { stations }: Scene,
  places: readonly StationPlace[],
  melt: MeltPlace,
  lane: number,
): readonly Child[] {
  return stations.flatMap((station, i) => {
    if (!isAway(station)) return [];
    const at = onTheWay(station.mold.travel ?? 0, places[i]!, melt, lane);
    return moldDrawing(id, station, at, rowMold);
  });
}

function onTheWay(travel: number, place: StationPlace, melt: MeltPlace, lane: number) {
  const end = place.isCard ? 1 : alongLane;
  const along = Math.min(1, travel / end);
  const down = Math.max(0, (travel - end) / (1 - alongLane));
  const target = Math.max(rowMold.half + rowMold.gap, place.middle);
  const die = dieOf(melt);
  return { x: die + along * (target - die), y: lane + down * (place.mold - lane) };
}
