// The keys of a station: its mold, its steps, and delivery values that differ from the cell.
import { stationDelivery } from "./deliveryKeys.ts";
import { meaningOf, windowShape } from "./tableKeys.ts";
import { defaulted, eitherOr, listOf, mapping, optional, required } from "#scenario/values/key.ts";
import {
  isKeysBesideDistribution,
  drawnTime,
  drawnTimeBeside,
  timeDistributionOrEstimate,
} from "#scenario/distributions/distribution.ts";
import { meanings } from "#scenario/values/leaf.ts";
import { oneOf, text, wholeNumber } from "#scenario/values/plainLeaf.ts";
import { stepName, stationName } from "#scenario/values/nameLeaf.ts";

export const mostStations = 16;

const doneBy = oneOf({
  machine: "By machine, without an operator.",
  operator: "By an operator: the mold waits for a free one, who is busy for that time.",
});

const remove = mapping(
  () => ({
    time: required(drawnTime, "Time to remove the parts, tail strip included."),
    by: defaulted(doneBy, "stations.*.steps.remove.by", "By machine, or by an operator, who is busy for that time."),
  }),
  "{ time: 0.8 s, by: machine }",
);

const clear = mapping(
  () => ({
    time: required(drawnTime, "Time to clear the mold of a lost shot."),
    by: defaulted(doneBy, "stations.*.steps.clear.by", "By machine, or by an operator, who is busy for that time."),
  }),
  "{ time: 90 s, by: operator }",
);

const steps = mapping(
  () => ({
    close: required(drawnTime, "Mold closes, with lock-up and pin entry or pinch."),
    blow: required(timeDistributionOrEstimate, "Blow air inflates the parison, blow delay included; or `estimate`."),
    cool: required(
      timeDistributionOrEstimate,
      "Part cools under pressure; or `estimate`, from wall, material and temperatures.",
      { triangular: ["7.0 s", "7.5 s", "9.0 s"] },
    ),
    vent: required(timeDistributionOrEstimate, "Pressure falls before the mold may open; or `estimate`."),
    open: required(drawnTime, "Mold opens, pin out included."),
    remove: required(
      eitherOr(drawnTimeBeside("{ time: 0.8 s, by: operator }"), remove, isKeysBesideDistribution),
      "Parts leave the mold: a time by machine, or a mapping with `by: operator`.",
      { time: "0.8 s", by: "operator" },
    ),
    clear: optional(clear, "A lost shot is removed from the open mold; needed where a stop can cause one."),
    travelIn: optional(drawnTime, "Mold travels under the die (continuous).", "0.7 s"),
    cut: optional(drawnTime, "Parison is cut (continuous).", "0.2 s"),
    travelOut: optional(drawnTime, "Mold travels to the blow station (continuous).", "0.7 s"),
  }),
  "{ close: 0.6 s, blow: 0.5 s, cool: 7.5 s, vent: 0.5 s, open: 0.6 s, remove: 0.8 s }",
);

const extraStep = mapping(
  () => ({
    after: required(text("close"), "The cycle step, or the extra step listed before, that this one follows."),
    name: required(stepName, "Name of the step in tables."),
    time: required(drawnTime, "Time of the step."),
  }),
  "{ after: close, name: pin down, time: 0.3 s }",
);

const station = mapping(
  () => ({
    name: optional(stationName, "Name in every table; `station 1` and so on where absent."),
    count: optional(
      wholeNumber(1, mostStations, "too-many-stations"),
      "Number of identical stations: `{ count: 2, name: side }` gives side 1 and side 2.",
      2,
    ),
    cavities: required(wholeNumber(1, 12), meaningOf("station.cavities")),
    product: optional(text("bottle"), "The one of `products` that its mold makes."),
    delivery: optional(stationDelivery, "Delivery values of this station alone."),
    steps: required(steps, "Times of the cycle's steps."),
    extra: optional(
      listOf(extraStep, "a list of `{ after: close, name: pin down, time: 0.3 s }`"),
      "Extra steps of the cycle.",
    ),
    ...windowShape("station"),
    priority: defaulted(
      wholeNumber(1, 99),
      "stations.*.priority",
      "Rank under `dispatch: priority`; 1 is served first.",
    ),
  }),
  "{ name: left, cavities: 2, steps: { close: 0.6 s, blow: 0.5 s, cool: 7.5 s, vent: 0.5 s, open: 0.6 s, remove: 0.8 s } }",
).register(meanings, { id: "station" });

export const stations = eitherOr(listOf(station, "a list of stations, or one mapping with `count: 2`"), station);
