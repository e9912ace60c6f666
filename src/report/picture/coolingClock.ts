// The cooling time as a clock: the sector is the share that is over.
import { element, type Child } from "#report/charts/markup.ts";

interface ClockPlace {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** A stroke as wide as the radius makes a sector without trigonometry. */
export function coolingClock(cooling: number, { x, y, radius }: ClockPlace): readonly Child[] {
  const share = Math.max(0, Math.min(1, cooling)) * 100;
  const sector = {
    cx: x,
    cy: y,
    r: radius / 2,
    pathLength: 100,
    transform: `rotate(-90 ${x} ${y})`,
    "stroke-dasharray": `${share.toFixed(1)} 100`,
    "stroke-width": radius,
    class: "sector",
  };
  return [element("circle", { cx: x, cy: y, r: radius, class: "clock" }), element("circle", sector)];
}
