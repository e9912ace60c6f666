// The choice between SI and US customary units.
import type { Signal } from "@preact/signals";
import { h, type ComponentChild, type TargetedEvent } from "preact";
import type { UnitSystem } from "#foundation/formatQuantity.ts";

const systems: readonly (readonly [UnitSystem, string])[] = [
  ["si", "SI (g, °C)"],
  ["us", "US (oz, °F)"],
];

export function UnitsChoice({ units }: { readonly units: Signal<UnitSystem> }): ComponentChild {
  return h(
    "label",
    {},
    "Units ",
    h(
      "select",
      {
        onChange: ({ currentTarget }: TargetedEvent<HTMLSelectElement>) => {
          units.value = currentTarget.value === "us" ? "us" : "si";
        },
      },
      systems.map(([system, words]) => h("option", { value: system, selected: system === units.value }, words)),
    ),
  );
}
