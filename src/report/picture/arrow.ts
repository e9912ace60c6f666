// A short arrow that says which way something moves.
import { element, type Markup } from "#report/charts/markup.ts";

/** Its tip is at x, y; `direction` is 1 to the right and -1 to the left. */
export function arrow({ x, y }: { readonly x: number; readonly y: number }, direction: number, length: number): Markup {
  const back = x - direction * length;
  const barb = x - direction * 4;
  return element("path", { d: `M${back} ${y}H${x}M${barb} ${y - 4}L${x} ${y}L${barb} ${y + 4}`, class: "arrow" });
}
