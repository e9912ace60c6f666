// What parts pass after the mold, one server after another, and what becomes of all that is no good part.
import { byName, defaulted, mapping, optional, required } from "#scenario/values/key.ts";
import { drawnTime } from "#scenario/distributions/distribution.ts";
import { oneOf, text, truth, wholeNumber } from "#scenario/values/plainLeaf.ts";
import { quantity } from "#scenario/values/quantityLeaf.ts";

const server = mapping(
  () => ({
    time: required(drawnTime, "Time for one part in one place: of a conveyor the way, of a cooling rack the stay."),
    places: defaulted(wholeNumber(1, 200), "takeaway.*.places", "Parts worked on at once, side by side."),
    buffer: defaulted(wholeNumber(0, 1_000_000), "takeaway.*.buffer", "Parts that find room to wait before it."),
    rejects: optional(quantity("share", { atMost: 1 }), "Share of parts that it refuses: they leave here."),
    reason: optional(text("leaks"), "Why it refuses them, as tables say it; its name where absent."),
    perStation: optional(truth, "Whether every station has one of its own, such as a cooling mask; `no` where absent."),
    minAge: optional(quantity("time", { above: 0 }), "Age since leaving the mold before which a part has to wait."),
    maxAge: optional(quantity("time", { above: 0 }), "Age since leaving the mold beyond which a part is a reject."),
    by: defaulted(oneOf("machine", "operator"), "takeaway.*.by", "Whether each part takes an operator as well."),
  }),
  "{ time: 2 s, buffer: 10 }",
);

/** All at the top of a scenario. */
export const takeawayKeys = {
  takeaway: optional(byName(server, "a mapping of servers by name"), "What parts pass after the mold, in this order."),
  regrind: optional(
    mapping(
      () => ({ limit: required(quantity("share", { atMost: 1 }), "Largest share of regrind in the feed.") }),
      "{ limit: 30 % }",
    ),
    "Regrind: flash, rejects, lost shots and excess go back into the feed, up to a limit.",
  ),
};
