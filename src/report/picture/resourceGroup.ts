// The element that stands for one resource.
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import { element, type Child, type Markup } from "#report/charts/markup.ts";
import type { Box } from "#report/charts/patterns.ts";

/** The part of the options that every drawing needs. */
export interface Picked {
  readonly id: string;
  /** Name of a resource. */
  readonly chosen: string;
}

/** Of drawings that say quantities. */
export interface PickedInUnits extends Picked {
  readonly units: UnitSystem;
}

/** A click on the group chooses the resource; the frame shows the chosen one. */
export function resourceGroup({ id, chosen }: Picked, name: string, frame: Box, drawn: readonly Child[]): Markup {
  const isChosen = name === chosen;
  return element(
    "g",
    { id, "data-resource": name, class: isChosen ? "resource is-chosen" : "resource" },
    ...(isChosen ? [element("rect", { ...frame, class: "chosen" })] : []),
    ...drawn,
  );
}
