// Published values of the heat in the melt and of the water that removes it.
import { coolingWater } from "#physics/cooling/coolingWater.ts";
import { enthalpyChange } from "#physics/cooling/enthalpyChange.ts";
import { inSi } from "#foundation/quantity.ts";
import { unitSpelled } from "#foundation/unit.ts";
import type { Dimension } from "#foundation/dimension.ts";
import { valuesOf, type PublishedValue } from "../publishedValue.ts";

const si = (value: number, unit: string, dimension: Dimension): number => inSi(value, unitSpelled(unit, dimension)!);

const BTU_PER_HOUR = 1055.05585262 / 3600;
const TON_OF_REFRIGERATION = 12_000 * BTU_PER_HOUR;
const GALLON_PER_MINUTE = si(1, "gal/min", "volumeFlow");
const rise = (fahrenheit: number): number => fahrenheit / 1.8;

const perTon = valuesOf("heat and water", "R", "mepanet.com, How to size chiller capacity, table of gal/min a ton");
const roundFactor = { share: 0.01, because: "the table takes 500 BTU min/(h gal °F) for water" };
const gallonsPerTon = (fahrenheit: number, printed: string): PublishedValue =>
  perTon(
    `water for one ton of refrigeration, rise of ${fahrenheit} °F`,
    printed,
    "gal/min",
    () => coolingWater(TON_OF_REFRIGERATION, rise(fahrenheit)) / GALLON_PER_MINUTE,
    roundFactor,
  );

const specificHeat = si(0.55, "BTU/(lb °F)", "specificHeat");
const heated = enthalpyChange.bind(null, { solid: specificHeat, melt: specificHeat, transition: 130, fusion: 0 });

export const heat: readonly PublishedValue[] = [
  gallonsPerTon(10, "2.4"),
  gallonsPerTon(20, "1.2"),
  valuesOf("heat and water", "R", "trade article on the energy of extrusion, worked example")(
    "heat of 1000 lb/h of HDPE from 75 to 425 °F without fusion",
    "192500",
    "BTU/h",
    () => (heated((75 - 32) / 1.8, (425 - 32) / 1.8) * si(1000, "lb/h", "rate")) / BTU_PER_HOUR,
  ),
];
