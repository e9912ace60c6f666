// The keys of a product: its masses and its material, and what the process window needs of part, parison, die and air.
import { flash } from "#scenario/values/flashLeaf.ts";
import { defaulted, eitherOr, mapping, optional } from "#scenario/values/key.ts";
import { renamedChoice, text } from "#scenario/values/plainLeaf.ts";
import { materialShape, meaningOf, windowShape } from "./tableKeys.ts";

const material = mapping(
  () => ({
    name: optional(text("HDPE"), "Name from the catalog: the material whose other values apply."),
    ...materialShape(),
  }),
  "{ name: HDPE, meltDensity: 760 kg/m³ }",
);

export const product = mapping(
  () => ({
    material: optional(eitherOr(text("HDPE"), material), "Name from the catalog, or a mapping with own values."),
    ...windowShape("product"),
    flash: defaulted(flash, "product.flash", meaningOf("product.flash")),
    wall: optional(
      mapping(() => windowShape("product.wall"), "{ mean: 0.9 mm, thickest: 1.3 mm }"),
      "Wall of the blown part.",
    ),
    color: optional(text("natural"), "Color, for changes."),
    die: optional(
      mapping(() => windowShape("product.die"), "{ diameter: 30 mm, mandrel: 27 mm }"),
      "Die that forms the parison.",
    ),
    coolingTo: optional(
      renamedChoice(
        // Where only the mold cools, the inside face is the hottest point.
        { inside: "hottest" },
        {
          hottest: "The hottest point of the thickest place.",
          mean: "The mean through the wall of the thickest place.",
        },
      ),
      "Temperature that must have fallen to `demoldTemperature`: of the hottest point of the thickest place (`hottest`, where absent), or its mean.",
    ),
    flush: optional(
      mapping(() => windowShape("product.flush"), "{ time: 3 s, conductance: 1 dm³/(s bar) }"),
      "Air that flows through the part at blow pressure while it cools. Its cooling is `insideAir`.",
    ),
    insideAir: optional(
      mapping(() => windowShape("product.insideAir"), "{ transfer: 30 W/(m² K), temperature: 20 °C }"),
      "Air inside the part, where it cools the wall as well. Where absent, the inside face counts as insulated.",
    ),
  }),
  "{ partMass: 42 g, flash: 30 % of part }",
);
