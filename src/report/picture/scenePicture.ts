// The picture of a cell at one time: melt side above, molds below it, operators and takeaway at the bottom.
import { words } from "#report/charts/chart.ts";
import { element, type Child, type Markup } from "#report/charts/markup.ts";
import { patternDefinitions } from "#report/charts/patterns.ts";
import type { Scene, SceneStation } from "#report/scene/scene.ts";
import { chamberDrawing } from "./chamberDrawing.ts";
import { dieDrawing, travelingMolds } from "./dieDrawing.ts";
import { floorDrawing, floorHeight } from "./floorDrawing.ts";
import { barrel, phoneMelt, wideMelt, type MeltPlace } from "./meltPlace.ts";
import { sceneFacts, meltWords } from "./pictureWords.ts";
import { screwDrawing, shotInset } from "./screwDrawing.ts";
import { stationDrawing, stationView } from "./stationDrawing.ts";
import { cellPlaces, longestRow, type CellPlaces } from "./stationPlaces.ts";
import { statePlate } from "./statePlate.ts";
import { manifold, portNumbers, valveDrawing } from "./valveDrawing.ts";

export interface PictureOptions {
  /** Unique on its page; every resource has an element of its own whose id begins with it. */
  readonly id: string;
  /** A phone has room for the chosen mold and the screw only. */
  readonly width: "wide" | "phone";
  /** Name of a resource. */
  readonly chosen: string;
}

const widths = { wide: 960, phone: 360 } as const;

/** The same scene gives the same text. Elements with `data-resource` stand for the resource of that name. */
export function scenePicture(scene: Scene, options: PictureOptions): Markup {
  const { id, chosen } = options;
  const facts = sceneFacts(scene);
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
  const width = widths[options.width];
  const isPhone = options.width === "phone";
  const melt = isPhone ? phoneMelt : wideMelt;
  const shown = isPhone ? [chosenStation(scene, chosen)] : scene.stations;
  const places = cellPlaces(shown.length, scene.delivery, melt, width);
  const floor = isPhone ? 0 : floorHeight(scene);
  return element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      viewBox: `0 0 ${width} ${Math.ceil(places.bottom + floor)}`,
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
    ...(isPhone ? [] : floorDrawing(id, scene, places.bottom, width, chosen)),
  );
}

/** A resource that is no station has the one that it serves, else the first. */
function chosenStation({ stations, screw, operators, rams }: Scene, chosen: string): SceneStation {
  const named = (name: string | null | undefined) => stations.find((station) => station.name === name);
  const operator = operators.find(({ name }) => name === chosen);
  const ram = rams.find(({ name }) => name === chosen);
  return named(chosen) ?? named(operator?.at ?? ram?.of) ?? named(screw.station) ?? stations[0]!;
}

function meltSide(
  scene: Scene,
  shown: readonly SceneStation[],
  places: CellPlaces,
  melt: MeltPlace,
  { id, chosen }: PictureOptions,
): readonly Child[] {
  const { screw, valve } = scene;
  const ports = shown.map(({ name }) => name);
  const isRow = shown.length <= longestRow;
  const outlets = shown.map(({ name }, i) => ({ station: name, x: places.stations[i]!.middle }));
  const channels = isRow
    ? manifold(outlets, valve?.openTo ?? null, melt, places.stations[0]!.head)
    : portNumbers(ports.length, melt);
  return [
    resourceGroup(`${id}-screw`, screw.name, chosen, screwDrawing(id, screw, melt)),
    ...shotInset(id, screw, melt),
    ...(places.lane === null ? channels : dieDrawing(id, scene, melt, places.lane)),
    ...(valve ? [resourceGroup(`${id}-valve`, valve.name, chosen, valveDrawing(id, valve, ports, melt))] : []),
    ...commonRam(id, scene, melt, chosen),
  ];
}

/** A common accumulator lies between barrel and valve. */
function commonRam(id: string, { rams }: Scene, melt: MeltPlace, chosen: string): readonly Child[] {
  const ram = rams.find(({ of }) => of === null);
  if (ram === undefined) return [];
  const box = { x: melt.nozzle - 2, y: 4, width: 26, height: barrel.axis - 4 };
  const { x, y, width } = melt.ramWords;
  const drawn = [
    ...chamberDrawing(id, ram, box),
    ...statePlate(id, ram, melt.ramWords),
    words(`melt ${meltWords(ram.melt)}`, x + width, y + 60, { anchor: "end", style: "mass" }),
  ];
  return [resourceGroup(`${id}-ram`, ram.name, chosen, drawn)];
}

function moldSide(
  scene: Scene,
  shown: readonly SceneStation[],
  places: CellPlaces,
  { id, chosen }: PictureOptions,
): readonly Child[] {
  return shown.map((station, i) => {
    const { x, y, width, height } = places.stations[i]!;
    const frame = element("rect", { x: x + 1, y: y - 2, width: width - 2, height, class: "chosen" });
    const view = stationView(scene, station);
    return resourceGroup(
      `${id}-station-${view.number}`,
      station.name,
      chosen,
      stationDrawing(id, view, places.stations[i]!),
      frame,
    );
  });
}

/** A click on the group chooses the resource. */
function resourceGroup(id: string, name: string, chosen: string, drawn: readonly Child[], frame?: Markup): Markup {
  const isChosen = name === chosen;
  return element(
    "g",
    { id, "data-resource": name, class: isChosen ? "resource is-chosen" : "resource" },
    ...(isChosen && frame ? [frame] : []),
    ...drawn,
  );
}
