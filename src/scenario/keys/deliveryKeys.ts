// The keys of melt delivery: its kind, the screw with its rates or measured times, and the valve.
import { defaulted, mapping, optional, required } from "#scenario/values/key.ts";
import { rateDistribution, drawnTime } from "#scenario/distributions/distribution.ts";
import { leaf, type Leaf } from "#scenario/values/leaf.ts";
import { oneOf, renamedChoice } from "#scenario/values/plainLeaf.ts";
import { mass, quantity, quantitySchema, readQuantity } from "#scenario/values/quantityLeaf.ts";
import { meaningOf, windowShape } from "./tableKeys.ts";

const timeOrNever: Leaf<number | "never"> = leaf<number | "never">({
  expected: "a time such as `10 min`, or `never`",
  json: { anyOf: [{ const: "never" }, quantitySchema("time")] },
  read: (written) => (written === "never" ? { value: written } : readQuantity(written, "time")),
});

/** Keys by which a station may differ from the cell. */
const ownKeys = {
  plasticatingRate: optional(rateDistribution, meaningOf("delivery.plasticatingRate")),
  recharge: optional(
    drawnTime,
    "Measured time to recharge the shot, decompression included; or give `plasticatingRate`.",
  ),
  deliveryRate: optional(rateDistribution, "Melt that the ram pushes out per hour; or give `drop`."),
  drop: optional(
    drawnTime,
    "Measured time of the parison drop, pre-blow and die closing included; or give `deliveryRate`.",
  ),
};

export const stationDelivery = mapping(() => ownKeys, "{ drop: 1.2 s }");

export const delivery = mapping(
  () => ({
    kind: required(
      oneOf("reciprocating-screw", "accumulator-head", "continuous"),
      "How melt is delivered: by the screw itself, by an accumulator, or continuously.",
    ),
    ...ownKeys,
    ...windowShape("delivery"),
    rechargeStarts: defaulted(
      oneOf("valve-neutral", "mold-closed"),
      "delivery.rechargeStarts",
      "Recharge starts when the valve is neutral, or when it is neutral and the mold has closed.",
    ),
    shotFor: defaulted(
      oneOf("served", "next"),
      "delivery.shotFor",
      "Station whose shot a recharge makes ready: the one just served, or the next one (with `dispatch: alternate` only).",
    ),
    accumulator: optional(
      oneOf("per-station", "common"),
      "Accumulator head: one chamber in the head of each station (`per-station`, where absent), or one before the valve.",
    ),
    rate: optional(
      oneOf("matched", "fixed"),
      "Continuous: the screw is turned down to the pace of the molds (`matched`, where absent), or runs at its full rate.",
    ),
    rateRange: optional(
      mapping(
        () => ({ min: required(quantity("rate", { above: 0 }), "Lowest plasticating rate of the screw.") }),
        "{ min: 80 kg/h }",
      ),
      "Continuous: range to which a matched screw can be turned down from `plasticatingRate`.",
    ),
    stopsScrewAfter: optional(
      timeOrNever,
      "Continuous: the screw stops when every station has been stopped for this time (`never`, where absent). Until then its melt goes to regrind.",
    ),
    removal: optional(
      oneOf("mold", "pin"),
      "Continuous: the mold waits for the removal (`mold`, where absent), or a pin carries the part to a mask beside the mold.",
    ),
    screw: optional(
      mapping(() => windowShape("delivery.screw"), "{ channelDepth: 4 mm, helixAngle: 17.7 deg, speed: 60 rpm }"),
      "Metering zone of the screw, for the process window.",
    ),
    manifoldHoldUp: optional(
      mass({ above: 0 }),
      "Melt in the manifold or head of one station, for changes of color and material.",
    ),
    meltRise: optional(
      mapping(() => windowShape("delivery.meltRise"), "{ from: 110 kg/h, rise: 4 °C, per: 10 kg/h }"),
      "Rise of the melt temperature with `plasticatingRate`, from your own measurements; for the process window.",
    ),
  }),
  "{ kind: reciprocating-screw, plasticatingRate: 110 kg/h, deliveryRate: 420 kg/h }",
);

export const valve = mapping(
  () => ({
    shift: optional(
      drawnTime,
      "Time of one shift of the selector valve between neutral and a port; `0 s` if there is none. A continuous extruder has no valve.",
    ),
    dispatch: defaulted(
      renamedChoice(
        { "longest-waiting": "longest-since-drop" },
        "first-ready",
        "longest-since-drop",
        "alternate",
        "priority",
      ),
      "valve.dispatch",
      "Rule for which waiting station gets the next shot; under continuous extrusion, which mold gets the next parison.",
    ),
  }),
  "{ shift: 0.3 s, dispatch: first-ready }",
);
