// What was measured at the real cell, to hold the model against.
import { mapping, optional } from "#scenario/values/key.ts";
import { quantity } from "#scenario/values/quantityLeaf.ts";

export const measured = mapping(
  () => ({
    shots: optional(quantity("countPerTime", { above: 0 }), "Shots of the whole cell; with a calendar on shift."),
    parts: optional(
      quantity("countPerTime", { above: 0 }),
      "Good parts of the whole cell; with a calendar on shift.",
      "790 per h",
    ),
    cycle: optional(
      quantity("time", { above: 0 }),
      "Cycle time of a station from shot to shot, the mean of all stations.",
      "12.2 s",
    ),
  }),
  "{ shots: 395 per h }",
);
