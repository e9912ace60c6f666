// The upper part of the picture: screw, common accumulator, valve and manifold, or the die.
import { fittedWords, words } from "#report/charts/chart.ts";
import type { Child } from "#report/charts/markup.ts";
import type { Box } from "#report/charts/patterns.ts";
import type { Scene, SceneStation } from "#report/scene/scene.ts";
import { chamberDrawing } from "./chamberDrawing.ts";
import { dieDrawing } from "./dieDrawing.ts";
import { barrel, dieOf, type MeltPlace } from "./meltPlace.ts";
import { meltWords } from "./pictureWords.ts";
import { resourceGroup, type PickedInUnits } from "./resourceGroup.ts";
import { screwDrawing, shotInset } from "./screwDrawing.ts";
import { longestRow, type CellPlaces, type StationPlace } from "./stationPlaces.ts";
import { plateHeight, statePlate, type Place } from "./statePlate.ts";
import { manifold, portNumbers, valveDrawing } from "./valveDrawing.ts";

/** `shown` are the stations of the picture. */
export function meltSide(
  scene: Scene,
  shown: readonly SceneStation[],
  places: CellPlaces,
  melt: MeltPlace,
  { id, chosen, units }: PickedInUnits,
): readonly Child[] {
  const { screw, valve } = scene;
  const ports = shown.map(({ name }) => name);
  const drawnScrew = [...screwDrawing(id, screw, melt, units), ...shotInset(id, screw, melt)];
  const drawnValve = valve ? valveDrawing(id, valve, ports, melt) : [];
  return [
    resourceGroup({ id: `${id}-screw`, chosen }, screw.name, frameOf(melt.screwWords), drawnScrew),
    ...(places.lane === null ? channels(scene, ports, places, melt) : dieDrawing(id, scene, melt, places.lane)),
    ...(valve ? [resourceGroup({ id: `${id}-valve`, chosen }, valve.name, frameOf(melt.valveWords), drawnValve)] : []),
    ...commonRam(scene, melt, { id, chosen, units }),
  ];
}

/** Cards have no room for channels: there the ports have numbers. */
function channels(
  { valve }: Scene,
  ports: readonly string[],
  { stations }: CellPlaces,
  melt: MeltPlace,
): readonly Child[] {
  if (ports.length > longestRow) return portNumbers(ports.length, melt);
  const outlets = ports.map((station, i) => ({ station, x: stations[i]!.middle }));
  return [...manifold(outlets, valve?.openTo ?? null, melt, stations[0]!.head), ...labels(stations.at(-1)!, melt)];
}

/** What the parts are called, once, on the side without channels. */
function labels({ middle, head, mold, size }: StationPlace, melt: MeltPlace): readonly Child[] {
  const isRight = middle >= dieOf(melt);
  const at = (aside: number) => middle + (isRight ? aside : -aside);
  const style = { anchor: isRight ? "start" : "end", style: "quiet" } as const;
  return [
    words("manifold", at(12), head - 4, style),
    words("head", at(24), mold - 7, style),
    words("mold", middle, mold + size.height + 13, { anchor: "middle", style: "quiet" }),
  ];
}

/** A common accumulator lies between barrel and valve. */
function commonRam({ rams }: Scene, melt: MeltPlace, { id, chosen, units }: PickedInUnits): readonly Child[] {
  const ram = rams.find(({ of }) => of === null);
  if (ram === undefined) return [];
  const box = { x: melt.nozzle + 10, y: 12, width: 22, height: barrel.axis - 16 };
  const { x, y, width } = melt.ramWords;
  const drawn = [
    ...chamberDrawing(id, ram, box),
    ...statePlate(id, ram, melt.ramWords),
    words(fittedWords(`melt: ${meltWords(ram.melt, units)}`, width), x, y + 60, { style: "mass" }),
  ];
  return [resourceGroup({ id: `${id}-ram`, chosen }, ram.name, frameOf(melt.ramWords), drawn)];
}

/** Around the words of a resource. */
function frameOf({ x, y, width }: Place): Box {
  return { x: x - 4, y: y + 1, width: width + 8, height: plateHeight + 2 };
}
