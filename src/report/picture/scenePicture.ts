// The picture of a cell at one time: melt side above, molds below it, operators and takeaway at the bottom.
import { element, type Child, type Markup } from "#report/charts/markup.ts";
import { patternDefinitions } from "#report/charts/patterns.ts";
import type { Scene, SceneStation } from "#report/scene/scene.ts";
import { travelingMolds } from "./dieDrawing.ts";
import { floorDrawing, floorHeight } from "./floorDrawing.ts";
import { footDrawing, footHeight, phoneNotes } from "./footDrawing.ts";
import { phoneMelt, shortMelt, wideMelt } from "./meltPlace.ts";
import { meltSide } from "./meltSide.ts";
import { sceneFacts } from "./pictureWords.ts";
import { resourceGroup, type PickedInUnits } from "./resourceGroup.ts";
import { stationDrawing, stationView } from "./stationDrawing.ts";
import { cellPlaces, type CellPlaces } from "./stationPlaces.ts";

/** `id` is unique on its page; every resource has an element of its own whose id begins with it. */
export interface PictureOptions extends PickedInUnits {
  /** A phone has room for the chosen mold and the screw only. */
  readonly width: "wide" | "phone";
}

/** For the letters of the first line. */
const headroom = 4;

/** More stations need the whole width. */
const fewStations = 3;

/** The same scene gives the same text. Elements with `data-resource` stand for the resource of that name. */
export function scenePicture(scene: Scene, options: PictureOptions): Markup {
  const { id, chosen, units } = options;
  const facts = sceneFacts(scene, units);
  const list = facts.map(({ resource, sentence }) =>
    element("li", { "aria-current": resource === chosen ? "true" : undefined }, sentence),
  );
  const description = facts.map(({ sentence }) => sentence).join(" ");
  return element(
    "div",
    { class: "scene" },
    drawing(scene, options, description),
    element("ul", { class: "unseen", id: `${id}-facts` }, ...list),
  );
}

function drawing(scene: Scene, options: PictureOptions, description: string): Markup {
  const { id, chosen } = options;
  const isPhone = options.width === "phone";
  const shown = isPhone ? [chosenStation(scene, chosen)] : scene.stations;
  const melt = isPhone ? phoneMelt : shown.length > fewStations ? wideMelt : shortMelt;
  const places = cellPlaces(shown.length, scene.delivery, melt);
  const floor = isPhone ? footHeight : floorHeight(scene, melt.width);
  return element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      viewBox: `0 ${-headroom} ${melt.width} ${Math.ceil(places.bottom + floor) + headroom}`,
      role: "img",
      "aria-labelledby": `${id}-title ${id}-description`,
    },
    element("title", { id: `${id}-title` }, `The cell at ${scene.seconds.toFixed(2)} s`),
    element("desc", { id: `${id}-description` }, description),
    patternDefinitions(id),
    ...meltSide(scene, shown, places, melt, options),
    ...moldSide(scene, shown, places, options),
    ...(places.lane === null
      ? []
      : travelingMolds(id, { ...scene, stations: shown }, places.stations, melt, places.lane)),
    ...(isPhone
      ? footDrawing(scene, places.bottom, 4, phoneNotes)
      : floorDrawing({ id, chosen }, scene, places.bottom, melt.width)),
  );
}

/** A resource that is no station has the one that it serves, else the first. */
function chosenStation({ stations, screw, operators, rams }: Scene, chosen: string): SceneStation {
  const named = (name: string | null | undefined) => stations.find((station) => station.name === name);
  const operator = operators.find(({ name }) => name === chosen);
  const ram = rams.find(({ name }) => name === chosen);
  return named(chosen) ?? named(operator?.at ?? ram?.of) ?? named(screw.station) ?? stations[0]!;
}

function moldSide(
  scene: Scene,
  shown: readonly SceneStation[],
  places: CellPlaces,
  { id, chosen, units }: PickedInUnits,
): readonly Child[] {
  return shown.map((station, i) => {
    const place = places.stations[i]!;
    const { x, y, width, height } = place;
    const aside = place.isCard ? 2.5 : -1;
    const frame = { x: x - aside, y: y - 2, width: width + 2 * aside, height };
    const view = stationView(scene, station, shown.length, units);
    const own = { id: `${id}-station-${view.number}`, chosen };
    return resourceGroup(own, station.name, frame, stationDrawing({ id, chosen }, view, place));
  });
}
