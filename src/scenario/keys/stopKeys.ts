// Machine stops: what stops, how often, for how long, who repairs it, and what becomes of the step under way.
import { defaulted, listOf, mapping, optional, required } from "#scenario/values/key.ts";
import { drawnTime } from "#scenario/distributions/distribution.ts";
import { stepName } from "#scenario/values/nameLeaf.ts";
import { oneOf, text, wholeNumber } from "#scenario/values/plainLeaf.ts";

const stop = mapping(
  () => ({
    name: required(stepName, "What the stop is called in tables."),
    resource: required(
      text("left"),
      "What stops: `plasticator`, `valve`, a station, a server of the takeaway, or `every station`, each by luck of its own.",
    ),
    clock: defaulted(
      oneOf("calendar", "working"),
      "stops.*.clock",
      "Whether `between` passes all the time, or only while the resource works: not while it is starved, blocked or stopped.",
    ),
    between: optional(drawnTime, "Time from the end of one stop to the next, on that clock; or give `cycles`."),
    cycles: optional(
      wholeNumber(1, 10_000_000),
      "Cycles of the resource from one stop to the next; or give `between`.",
    ),
    repair: required(drawnTime, "How long the repair takes."),
    by: defaulted(
      oneOf("itself", "operator"),
      "stops.*.by",
      "Whether the repair takes an operator, and waits for one.",
    ),
    shift: optional(
      oneOf("in", "any"),
      "Whether the repair waits for a shift. By an operator: `in` (assumed where absent), or `any`: one is on call outside the shift. By itself: `any` (assumed), or `in`: its time passes only on shift.",
    ),
    step: defaulted(
      oneOf("finish", "hold", "scrap"),
      "stops.*.step",
      "What becomes of the step under way; blow, cool and vent always run on, and a hanging parison cannot be held.",
    ),
  }),
  "{ name: heater band, resource: plasticator, between: 40 h, repair: 30 min }",
);

export const stops = listOf(
  stop,
  "a list such as `[{ name: heater band, resource: plasticator, between: 40 h, repair: 30 min }]`",
);
