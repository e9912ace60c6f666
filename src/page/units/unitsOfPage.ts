// The units in which the page shows quantities.
import { createContext } from "preact";
import { useContext } from "preact/hooks";
import type { UnitSystem } from "#foundation/formatQuantity.ts";

export const UnitsOfPage = createContext<UnitSystem>("si");

export const useUnits = (): UnitSystem => useContext(UnitsOfPage);

/** As options of a call; SI is what it does by itself. */
export const unitsOption = (units: UnitSystem): readonly string[] => (units === "si" ? [] : [`--units ${units}`]);
