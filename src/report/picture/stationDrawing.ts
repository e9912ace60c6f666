// One station: its head, its mold, and what the record says of it in words.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { words } from "#report/charts/chart.ts";
import { element, type Child } from "#report/charts/markup.ts";
import type { Box } from "#report/charts/patterns.ts";
import type { Scene, SceneRam, SceneStation } from "#report/scene/scene.ts";
import { chamberDrawing } from "./chamberDrawing.ts";
import { coolingClock } from "./coolingClock.ts";
import { bundle, moldDrawing } from "./moldDrawing.ts";
import { operatorFigure } from "./operatorFigure.ts";
import { columnNotes, coolingNote, counted, madeWords, meltWords, wholePercent } from "./pictureWords.ts";
import { resourceGroup, type Picked } from "./resourceGroup.ts";
import { linePitch, plateHeight, quietLines, statePlate, wrapped } from "./statePlate.ts";
import type { StationPlace } from "./stationPlaces.ts";

/** What of the scene belongs to one station. */
export interface StationView {
  readonly station: SceneStation;
  /** From 1, as the ports are numbered, and how many there are. */
  readonly number: number;
  readonly stations: number;
  /** The others are not drawn. */
  readonly isAlone: boolean;
  readonly ram: SceneRam | undefined;
  /** Undefined where no valve serves it. */
  readonly isFed: boolean | undefined;
  readonly operators: readonly string[];
  readonly units: UnitSystem;
}

export function stationView(scene: Scene, station: SceneStation, drawn: number, units: UnitSystem): StationView {
  const { valve, rams, operators } = scene;
  return {
    station,
    number: scene.stations.indexOf(station) + 1,
    stations: scene.stations.length,
    isAlone: drawn < scene.stations.length,
    ram: rams.find(({ of }) => of === station.name),
    isFed: valve === null ? undefined : valve.openTo === station.name,
    operators: operators.filter(({ at }) => at === station.name).map(({ name }) => name),
    units,
  };
}

/** In continuous extrusion the mold may be elsewhere: then its place is empty. */
export function stationDrawing({ id, chosen }: Picked, view: StationView, place: StationPlace): readonly Child[] {
  const { station } = view;
  const isHere = station.mold.travel === null || station.mold.travel >= 1;
  const at = { x: place.middle, y: place.mold };
  const mold = isHere ? moldDrawing(id, station, at, place.size) : emptyPlace(place);
  const beside = place.isCard ? cardWords(id, view, place) : columnWords(id, view, place);
  return [...mold, ...(station.mold.travel === null ? head({ id, chosen }, view, place) : []), ...beside];
}

function emptyPlace({ middle, mold, size, isCard }: StationPlace): readonly Child[] {
  const width = size.half + size.gap;
  const { height } = size;
  const name = words("blow position", middle, mold + height / 2 + 4, { anchor: "middle", style: "quiet" });
  return [
    element("rect", { x: middle - width, y: mold, width: 2 * width, height, class: "empty" }),
    ...(isCard ? [] : [name]),
  ];
}

/** The die is its lower end; the bar on a card is the blocked port of the valve. */
function head(
  { id, chosen }: Picked,
  { ram, isFed, station, number }: StationView,
  place: StationPlace,
): readonly Child[] {
  const { middle, head: top, mold, size, isCard } = place;
  const lip = bundle(station.cavities, size) + 2;
  const width = Math.max(size.tube * (isCard ? 2.2 : 3), 2 * lip + 4);
  const dieTop = mold - (isCard ? 10 : 18);
  const die = `M${middle - width / 2} ${dieTop}H${middle + width / 2}L${middle + lip} ${mold - 1}H${middle - lip}Z`;
  const box = { x: middle - width / 2 + 2, y: top + 4, width: width - 4, height: dieTop - top - 4 };
  const own = { id: `${id}-head-${number}`, chosen };
  const chamber = ram ? [resourceGroup(own, ram.name, around(box), chamberDrawing(id, ram, box))] : [];
  const block = element("rect", { x: middle - 7, y: top - 3, width: 14, height: 4, class: "bar" });
  const mark =
    isCard && isFed === false ? [element("g", { class: "port blocked", "data-port": station.name }, block)] : [];
  return [...chamber, element("path", { d: die, class: "steel" }), ...mark];
}

function around({ x, y, width, height }: Box): Box {
  return { x: x - 9, y: y - 6, width: width + 18, height: height + 8 };
}

function columnWords(id: string, view: StationView, place: StationPlace): readonly Child[] {
  const { station, ram, operators, units } = view;
  const x = place.x + 6;
  const y = place.mold + place.size.height + 18;
  const width = place.width - 18;
  const lines = [
    ...(station.cause === null ? [] : wrapped(station.cause, width)),
    ...coolingNote(station.mold),
    ...columnNotes(station.mold, units),
    ...(ram ? [`head: ${ram.state}`, `melt: ${meltWords(ram.melt, units)}`] : []),
  ];
  const shown = lines.slice(0, place.notes);
  const below = y + plateHeight;
  return [
    ...clock(station, { x: place.clock, y: place.mold + 14, radius: 12 }),
    ...statePlate(id, station, { x, y, width }, { remark: columnRemark(view) }),
    ...quietLines(shown, { x, y: below, width }),
    ...quietLines([madeWords(station)], { x, y: below + place.notes * linePitch, width }),
    ...operatorFigure(operators, { x, y: below + (place.notes + 1) * linePitch, width }),
  ];
}

function cardWords(id: string, view: StationView, place: StationPlace): readonly Child[] {
  const { station, number, operators, isFed, units } = view;
  const { size, middle, y, width } = place;
  const x = middle + size.half + size.gap + 5;
  const right = place.x + width - x - 1;
  const full = { x: place.x, y, width };
  const note = [...(station.cause === null ? [] : [station.cause]), ...columnNotes(station.mold, units)].slice(
    0,
    place.notes,
  );
  const port = isFed === undefined ? "" : `port ${number}`;
  return [
    ...statePlate(id, station, full, { remark: port }),
    ...quietLines(note, { ...full, y: y + plateHeight }),
    ...clock(station, { x: place.clock, y: place.mold, radius: 8 }),
    ...(station.mold.cooling === null
      ? []
      : [words(wholePercent(station.mold.cooling), x + 20, place.mold + 4, { style: "quiet" })]),
    ...quietLines([counted(station.shots, "shot", "shots")], { x, y: place.mold + 12, width: right }),
    ...operatorFigure(operators, { x, y: place.mold + 30, width: right }),
  ];
}

/** A mold that is drawn alone has its number. */
function columnRemark({ station: { cavities }, number, stations, isAlone }: StationView): string {
  const place = isAlone ? [`station ${number} of ${stations}`] : [];
  return [...place, ...(cavities === 1 ? [] : [`${cavities} cavities`])].join(", ");
}

function clock(
  { mold }: SceneStation,
  at: { readonly x: number; readonly y: number; readonly radius: number },
): readonly Child[] {
  return mold.cooling === null ? [] : coolingClock(mold.cooling, at);
}
