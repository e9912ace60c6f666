// Below the molds: operators, masks and the servers of the takeaway, with their counts.
import { fittedWords, words } from "#report/charts/chart.ts";
import type { Child } from "#report/charts/markup.ts";
import type { Box } from "#report/charts/patterns.ts";
import type { Scene, SceneOperator, SceneServer } from "#report/scene/scene.ts";
import { arrow } from "./arrow.ts";
import { footDrawing, footHeight, wideNotes } from "./footDrawing.ts";
import { figure } from "./operatorFigure.ts";
import { operatorWords, serverWords } from "./pictureWords.ts";
import { resourceGroup, type Picked } from "./resourceGroup.ts";
import { linePitch, stateBand, statePlate, type Place } from "./statePlate.ts";

const narrowest = 236;
const gap = 16;

interface Slot {
  readonly resource: string;
  readonly draw: (place: Place) => readonly Child[];
}

const columnsOf = (width: number): number => Math.floor(width / narrowest);

/** Servers have a line more than the others. */
const pitchOf = ({ servers }: Scene): number => (servers.length === 0 ? 64 : 80);

/** Its height depends on the cell only, so that nothing jumps while time goes on. */
export function floorHeight(scene: Scene, width: number): number {
  const { operators, masks, servers } = scene;
  const rows = Math.ceil((operators.length + masks.length + servers.length) / columnsOf(width));
  return rows * pitchOf(scene) + footHeight;
}

export function floorDrawing({ id, chosen }: Picked, scene: Scene, top: number, width: number): readonly Child[] {
  const slots = [
    ...scene.operators.map((operator): Slot => ({
      resource: operator.name,
      draw: (place) => operatorSlot(id, operator, place),
    })),
    ...scene.masks.map((mask): Slot => ({ resource: mask.name, draw: (place) => statePlate(id, mask, place) })),
    ...scene.servers.map((server): Slot => ({
      resource: server.name,
      draw: (place) => serverSlot(id, server, place),
    })),
  ];
  const columns = columnsOf(width);
  const column = width / columns;
  const pitch = pitchOf(scene);
  return [
    ...slots.map(({ resource, draw }, i) => {
      const place = {
        x: (i % columns) * column + 6,
        y: top + 8 + Math.floor(i / columns) * pitch,
        width: column - gap,
      };
      return resourceGroup({ id: `${id}-floor-${i}`, chosen }, resource, frameOf(place, pitch), draw(place));
    }),
    ...footDrawing(scene, top + floorHeight(scene, width) - footHeight, 6, wideNotes),
  ];
}

function frameOf({ x, y, width }: Place, pitch: number): Box {
  return { x: x - 5, y: y - 4, width: width + 10, height: pitch - 4 };
}

/** The figure stands here while the operator is at no task, and moves while they walk; distances are not to scale. */
function operatorSlot(id: string, operator: SceneOperator, place: Place): readonly Child[] {
  const { x, y, width } = place;
  const { walksTo, at, progress, kind } = operator;
  const step = walksTo === null ? 0 : progress * 14;
  const style = at === null && kind !== "off" ? "figure" : "figure away";
  return [
    figure(x + 8 + step, y + 6, style),
    ...(walksTo === null ? [] : [arrow({ x: x + 32 + step, y: y + 15 }, 1, 12)]),
    words(fittedWords(operator.name, width - 54), x + 54, y + 12, { style: "name" }),
    words(fittedWords(operatorWords(operator), width - 54), x + 54, y + 28),
    ...stateBand(id, operator, { x, y: y + 34, width }),
  ];
}

/** More places have no marks on their bands, which are too short for them. */
const markedPlaces = 3;

/** One band for each place. */
function serverSlot(id: string, server: SceneServer, { x, y, width }: Place): readonly Child[] {
  const { name, places } = server;
  const shown = serverWords(server);
  const [states, counts] = [shown.slice(0, -2).join(", "), shown.slice(-2).join(", ")];
  const bands = places.length > markedPlaces ? places.map((place) => ({ ...place, until: null })) : places;
  const share = width / Math.max(1, places.length);
  return [
    words(fittedWords(name, width), x, y + 12, { style: "name" }),
    words(fittedWords(states, width), x, y + 28),
    words(fittedWords(counts, width), x, y + 28 + linePitch, { style: "quiet" }),
    ...bands.flatMap((place, i) => stateBand(id, place, { x: x + i * share, y: y + 34 + linePitch, width: share - 2 })),
  ];
}
