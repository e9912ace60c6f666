// What makes a part good, and what makes it a reject.
import { mapping, optional } from "#scenario/values/key.ts";
import { mass, quantity } from "#scenario/values/quantityLeaf.ts";

const share = quantity("share", { atMost: 1 });
const spread = quantity("share", { atMost: 0.2 });

/** All at the top of a scenario. */
export const qualityKeys = {
  quality: optional(
    mapping(
      () => ({
        lightest: optional(mass({ above: 0 }), "Least mass of a good part."),
        heaviest: optional(mass({ above: 0 }), "Most mass of a good part."),
        shotSpread: optional(spread, "Relative standard deviation of mass from shot to shot, alike in all cavities."),
        cavitySpread: optional(spread, "Relative standard deviation of mass between the cavities of one shot.", "1 %"),
        rejects: optional(share, "Share of parts that are rejects whatever their mass.", "2 %"),
        maxDemold: optional(
          quantity("temperature"),
          "Hottest that the thickest place of a good part may be when the mold begins to open.",
          "85 °C",
        ),
      }),
      "{ lightest: 41 g, heaviest: 44 g, shotSpread: 1 % }",
    ),
    "What makes a part good.",
  ),
  maxInMold: optional(
    quantity("time", { above: 0 }),
    "Longest time from the closed mold to the open one before the parts are rejects.",
    "60 s",
  ),
  maxHang: optional(
    quantity("time", { above: 0 }),
    "Longest wait of a hanging parison for a stop to end before its shot is lost; needs `steps.clear`.",
    "8 s",
  ),
};
