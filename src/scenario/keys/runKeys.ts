// The keys of a run and of the crew.
import { defaulted, listOf, mapping, optional } from "#scenario/values/key.ts";
import { leaf, refused, wrongType, type Leaf } from "#scenario/values/leaf.ts";
import { localInstant } from "./calendarKeys.ts";
import { oneOf, wholeNumber } from "#scenario/values/plainLeaf.ts";
import { quantity, quantitySchema, readQuantity } from "#scenario/values/quantityLeaf.ts";
import { drawnTime } from "#scenario/distributions/distribution.ts";

const seed: Leaf<string> = leaf({
  expected: "a word or a whole number such as `demo`",
  json: { anyOf: [{ type: "string", pattern: String.raw`\S` }, { type: "integer" }], examples: ["demo"] },
  read: (written) => {
    if (Number.isSafeInteger(written)) return { value: String(written) };
    if (typeof written === "string" && written.trim() !== "") return { value: written.trim() };
    return refused({ ...wrongType(written, "a word or a whole number such as `demo`"), remedy: "Put it in quotes." });
  },
});

const warmup: Leaf<number | "auto"> = leaf<number | "auto">({
  expected: "a time such as `30 min`, or `auto`",
  json: { anyOf: [{ const: "auto" }, quantitySchema("time")], examples: ["30 min"] },
  read: (written) => (written === "auto" ? { value: written } : readQuantity(written, "time", { usual: "min" })),
});

export const run = mapping(
  () => ({
    length: defaulted(quantity("time", { above: 0, usual: "h" }), "run.length", "Simulated time of one replication."),
    until: optional(
      localInstant,
      "Local date and time at which one replication ends, in place of `length`; needs a calendar.",
      "2026-03-29 14:00",
    ),
    replications: defaulted(wholeNumber(1, 100_000), "run.replications", "Independent repetitions."),
    seed: defaulted(seed, "run.seed", "Seed of the random numbers: the same seed gives the same results."),
    warmup: defaulted(warmup, "run.warmup", "Time from the start that is not counted. `auto` finds it from the run."),
    start: defaulted(
      oneOf({
        running: "The shot is full, the molds are open and empty.",
        cold: "The screw is empty and recharges first.",
      }),
      "run.start",
      "Shot full and molds empty, or the screw must recharge first.",
    ),
    precision: optional(
      quantity("share", { above: 0 }),
      "Replicate until the 95 % half width of good parts per hour is at most this share of it.",
      "0.5 %",
    ),
  }),
  "{ length: 8 h, replications: 20, seed: demo }",
);

export const crew = mapping(
  () => ({
    operators: defaulted(
      wholeNumber(0, 100),
      "crew.operators",
      "Operators, for removals, clearing, repairs and packing by operator.",
    ),
    walk: optional(drawnTime, "Walk of an operator from one place of work to another; none where absent.", "15 s"),
    priorities: optional(
      listOf(
        oneOf({
          removal: "Parts are removed from a mold.",
          clearing: "A lost shot is cleared from a mold.",
          repair: "A machine stop is repaired.",
          packing: "A server of the takeaway works on a part.",
        }),
        "a list such as `[removal, repair]`",
      ),
      "Tasks that wait for an operator: the first is served first, those not named last. Where absent, the first call is served first.",
    ),
  }),
  "{ operators: 1 }",
);
