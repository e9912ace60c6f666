// The selector valve with its ports, and the channels of the manifold to the heads.
import { words } from "#report/charts/chart.ts";
import { element, type Child, type Markup } from "#report/charts/markup.ts";
import type { SceneValve } from "#report/scene/scene.ts";
import { barrel, narrowestValve, type MeltPlace } from "./meltPlace.ts";
import { firstFitting, statePlate } from "./statePlate.ts";

/** A station with the place of its head, from left to right. */
export interface Outlet {
  readonly station: string;
  readonly x: number;
}

const pitch = 22;
const body = { top: barrel.top - 4, bottom: barrel.bottom + 4 } as const;
const channelWidth = 7;

/** Distance between the levels of two channels of the manifold. */
export const levelPitch = 12;

function valveWidth(ports: number): number {
  return Math.max(narrowestValve, ports * pitch);
}

/** The middle of each port. */
export function portPlaces(ports: number, { valve }: MeltPlace): readonly number[] {
  const middle = valve + valveWidth(ports) / 2;
  return Array.from({ length: ports }, (_, i) => middle + (i - (ports - 1) / 2) * pitch);
}

export function valveDrawing(
  id: string,
  valve: SceneValve,
  ports: readonly string[],
  place: MeltPlace,
): readonly Child[] {
  const width = valveWidth(ports.length);
  const middle = place.valve + width / 2;
  const shown = valve.openTo === null ? [`${valve.state}, all ports blocked`, valve.state] : [valve.state];
  return [
    element("rect", {
      x: middle - width / 2,
      y: body.top,
      width,
      height: body.bottom - body.top,
      rx: 5,
      class: "steel",
    }),
    element("rect", { x: middle - width / 2 + 5, y: barrel.axis - 5, width: width - 10, height: 10, class: "channel" }),
    ...portPlaces(ports.length, place).map((x, i) => portDrawing(x, ports[i]!, valve.openTo === ports[i])),
    ...statePlate(id, valve, place.valveWords, { state: firstFitting(shown, place.valveWords.width) }),
  ];
}

/** An open port is a channel through the body; a bar closes a blocked one. */
function portDrawing(x: number, station: string, isOpen: boolean): Markup {
  const top = barrel.axis + 5;
  const height = body.bottom - top;
  const hole = { x: x - channelWidth / 2, y: top, width: channelWidth, height };
  const shown = isOpen
    ? [element("rect", { ...hole, class: "melt" })]
    : [
        element("rect", { ...hole, class: "channel" }),
        element("rect", { x: x - pitch / 2 + 4, y: top + 5, width: pitch - 8, height: 6, class: "bar" }),
      ];
  return element("g", { class: isOpen ? "port open" : "port blocked", "data-port": station }, ...shown);
}

/** Numbers of the ports, where their channels are not drawn. */
export function portNumbers(count: number, place: MeltPlace): readonly Child[] {
  return portPlaces(count, place).map((x, i) =>
    words(String(i + 1), x, body.bottom + 14, { anchor: "middle", style: "quiet" }),
  );
}

/** Channels that do not cross: those to the far heads run above the others. `bottom` is the top of the heads. */
export function manifold(
  outlets: readonly Outlet[],
  openTo: string | null,
  place: MeltPlace,
  bottom: number,
): readonly Child[] {
  const ports = portPlaces(outlets.length, place);
  return outlets.map(({ station, x }, i) => {
    const level = bottom - 8 - levelOf(outlets, ports, i) * levelPitch;
    const port = ports[i]!;
    // A short way aside needs no corners.
    const way = Math.abs(x - port) < pitch / 2 ? `L${x}` : `V${level}H${x}V`;
    const d = `M${port} ${body.bottom}${way} ${bottom}`;
    return element(
      "g",
      {},
      element("path", { d, class: "channel-wall" }),
      element("path", { d, class: openTo === station ? "channel-melt flowing" : "channel-melt" }),
    );
  });
}

/** Counted from below: how many channels on the same side of their ports end nearer to the valve. */
function levelOf(outlets: readonly Outlet[], ports: readonly number[], own: number): number {
  const side = (i: number): number => Math.sign(outlets[i]!.x - ports[i]!);
  return outlets.filter((_, i) => side(i) === side(own) && (side(own) < 0 ? i > own : i < own)).length;
}
