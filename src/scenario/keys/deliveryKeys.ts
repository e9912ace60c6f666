// The keys of melt delivery: its kind, the screw with its rates or measured times, and the valve.
import { defaulted, mapping, optional, required } from "#scenario/values/key.ts";
import { rateDistribution, drawnTime } from "#scenario/distributions/distribution.ts";
import { leaf, type Leaf } from "#scenario/values/leaf.ts";
import { oneOf, renamedChoice } from "#scenario/values/plainLeaf.ts";
import { mass, quantity, quantitySchema, readQuantity } from "#scenario/values/quantityLeaf.ts";
import { meaningOf, windowShape } from "./tableKeys.ts";

const timeOrNever: Leaf<number | "never"> = leaf<number | "never">({
  expected: "a time such as `10 min`, or `never`",
  json: { anyOf: [{ const: "never" }, quantitySchema("time")], examples: ["10 min"] },
  read: (written) => (written === "never" ? { value: written } : readQuantity(written, "time")),
});

/** Keys by which a station may differ from the cell. */
const ownKeys = {
  plasticatingRate: optional(rateDistribution, meaningOf("delivery.plasticatingRate")),
  recharge: optional(
    drawnTime,
    "Measured time to recharge the shot, decompression included, or in which a parison grows (continuous); or give `plasticatingRate`.",
    "3.9 s",
  ),
  deliveryRate: optional(rateDistribution, "Melt that the ram pushes out per hour; or give `drop`.", "420 kg/h"),
  drop: optional(
    drawnTime,
    "Measured time of the parison drop, pre-blow and die closing included; or give `deliveryRate`.",
    "1.2 s",
  ),
};

export const stationDelivery = mapping(() => ownKeys, "{ drop: 1.2 s }");

const kinds = {
  "reciprocating-screw":
    "The screw moves back while it recharges, stops when the shot is full, and pushes it out through the valve.",
  "accumulator-head": "The screw fills an accumulator; its ram pushes out the shot.",
  continuous: "Continuous extrusion: each mold travels under the die and takes the full parison.",
} as const;

/** Ways of melt delivery, the usual one first. */
export const deliveryKinds = Object.keys(kinds) as readonly (keyof typeof kinds)[];

export const delivery = mapping(
  () => ({
    kind: required(oneOf(kinds), "How melt is delivered: by the screw itself, by an accumulator, or continuously."),
    ...ownKeys,
    ...windowShape("delivery"),
    rechargeStarts: defaulted(
      oneOf({
        "valve-neutral": "As soon as the valve is back in neutral.",
        "mold-closed": "When the valve is in neutral and the mold just filled has closed.",
      }),
      "delivery.rechargeStarts",
      "Recharge starts when the valve is neutral, or when it is neutral and the mold has closed.",
    ),
    shotFor: defaulted(
      oneOf({
        served: "The shot of the station that was just served is replaced.",
        next: "The shot of the next station in the rotation is prepared.",
      }),
      "delivery.shotFor",
      "Station whose shot a recharge makes ready: the one just served, or the next one (with `dispatch: alternate` only).",
    ),
    accumulator: optional(
      oneOf({
        "per-station": "Each station's head has a chamber of one shot; the screw fills one at a time.",
        common: "One chamber before the valve; the screw fills it also while a parison drops.",
      }),
      "Accumulator head: one chamber in the head of each station (`per-station`, where absent), or one before the valve.",
    ),
    rate: optional(
      oneOf({
        matched: "The screw is turned down to the pace of the molds.",
        fixed: "The screw runs at its full rate; what the molds do not take is excess melt.",
      }),
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
      oneOf({
        mold: "The parts are removed from the mold, which waits for that.",
        pin: "A pin carries the parts to a mask beside the mold; the removal is off the mold's cycle.",
      }),
      "Continuous: the mold waits for the removal (`mold`, where absent), or a pin carries the part to a mask beside the mold.",
    ),
    dieZone: optional(
      oneOf({
        shared: "A mold may travel in while the one before travels out; it closes when that one is out.",
        exclusive: "A mold travels in only when the one before has traveled out.",
      }),
      "Continuous: the next mold may travel in while one travels out (`shared`, where absent), or only after that. The default is common practice, no published source.",
    ),
    screw: optional(
      mapping(() => windowShape("delivery.screw"), "{ channelDepth: 4 mm, helixAngle: 17.7 deg, speed: 60 rpm }"),
      "Metering zone of the screw, for the process window.",
    ),
    manifoldHoldUp: optional(
      mass({ above: 0 }),
      "Melt in the manifold or head of one station, for changes of color and material.",
      "0.4 kg",
    ),
    meltRise: optional(
      mapping(() => windowShape("delivery.meltRise"), "{ from: 110 kg/h, rise: 4 °C, per: 10 kg/h }"),
      "Rise of the melt temperature with `plasticatingRate`, from your own measurements; for the process window.",
    ),
  }),
  "{ kind: reciprocating-screw, recharge: 3.9 s, drop: 1.2 s }",
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
        {
          "first-ready": "The station that became ready first.",
          "longest-since-drop": "The station whose last drop is the longest ago.",
          alternate: "The stations in fixed rotation; a late station is waited for.",
          priority: "The waiting station with the lowest number in `priority`.",
        },
      ),
      "valve.dispatch",
      "Rule for which waiting station gets the next shot; under continuous extrusion, which mold gets the next parison.",
    ),
  }),
  "{ shift: 0.3 s, dispatch: first-ready }",
);
