// What parts pass after the mold, one server after another, and what becomes of all that is no good part.
import { byName, defaulted, mapping, optional, required } from "#scenario/values/key.ts";
import { drawnTime } from "#scenario/distributions/distribution.ts";
import { oneOf, text, truth, wholeNumber } from "#scenario/values/plainLeaf.ts";
import { quantity } from "#scenario/values/quantityLeaf.ts";

/** Who does a piece of work at the end of the cycle. */
const doneBy = oneOf({
  machine: "By machine alone.",
  operator: "A part waits for an operator, who is busy for that time.",
});

const server = mapping(
  () => ({
    time: required(drawnTime, "Time for one part in one place; of a conveyor the travel, of a cooling rack the stay."),
    places: defaulted(wholeNumber(1, 200), "takeaway.*.places", "Parts worked on at once, side by side."),
    buffer: defaulted(wholeNumber(0, 1_000_000), "takeaway.*.buffer", "Parts that can wait before it."),
    rejects: optional(quantity("share", { atMost: 1 }), "Share of parts that it rejects: they leave here.", "0.5 %"),
    reason: optional(text("leaks"), "Why it rejects them, for the tables; its name where absent."),
    perStation: optional(truth, "Whether every station has one of its own, such as a cooling mask; `no` where absent."),
    minAge: optional(
      quantity("time", { above: 0 }),
      "Age since leaving the mold before which a part has to wait.",
      "60 s",
    ),
    maxAge: optional(
      quantity("time", { above: 0 }),
      "Age since leaving the mold beyond which a part is a reject.",
      "10 min",
    ),
    by: defaulted(doneBy, "takeaway.*.by", "Whether each part takes an operator as well."),
  }),
  "{ time: 2 s, buffer: 10 }",
);

/** All at the top of a scenario. */
export const takeawayKeys = {
  takeaway: optional(
    byName(server, "a mapping of servers by name", "trimmer"),
    "What parts pass after the mold, in this order.",
  ),
  regrind: optional(
    mapping(
      () => ({ limit: required(quantity("share", { atMost: 1 }), "Largest share of regrind in the feed.") }),
      "{ limit: 30 % }",
    ),
    "Regrind: flash, rejects, lost shots and excess go back into the feed, up to a limit.",
  ),
};
