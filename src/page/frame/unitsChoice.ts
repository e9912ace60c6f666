// The choice of the units of the page.
import { h, type ComponentChild, type TargetedEvent } from "preact";
import type { UnitSystem } from "#foundation/formatQuantity.ts";
import type { Session } from "./session.ts";

const names: readonly (readonly [units: UnitSystem, name: string])[] = [
  ["si", "SI: kg, mm, bar, °C"],
  ["us", "US: lb, in, psi, °F"],
];

export function UnitsChoice({ session: { units, goTo } }: { readonly session: Session }): ComponentChild {
  const choose = ({ currentTarget }: TargetedEvent<HTMLSelectElement>): void =>
    goTo({ units: names[currentTarget.selectedIndex]![0] });
  const options = names.map(([system, name]) => h("option", { key: system, selected: system === units.value }, name));
  return h("label", {}, "Units ", h("select", { onChange: choose }, options));
}
