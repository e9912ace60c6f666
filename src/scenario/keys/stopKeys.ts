// Machine stops: what stops, how often, for how long, who repairs it, and what becomes of the step under way.
import { defaulted, listOf, mapping, optional, required } from "#scenario/values/key.ts";
import { drawnTime } from "#scenario/distributions/distribution.ts";
import { stepName } from "#scenario/values/nameLeaf.ts";
import { oneOf, text, wholeNumber } from "#scenario/values/plainLeaf.ts";

const stop = mapping(
  () => ({
    name: required(stepName, "What the stop is called in tables."),
    resource: required(
      text("plasticator"),
      "What stops: `plasticator`, `valve`, a station, a server of the takeaway, or `every station`, each with random numbers of its own.",
    ),
    clock: defaulted(
      oneOf({
        calendar: "The clock always runs.",
        working:
          "The clock runs while the resource works; it stands while the resource is starved, blocked or stopped.",
      }),
      "stops.*.clock",
      "Whether `between` passes all the time, or only while the resource works: not while it is starved, blocked or stopped.",
    ),
    between: optional(drawnTime, "Time from the end of one stop to the next, on that clock; or give `cycles`."),
    cycles: optional(
      wholeNumber(1, 10_000_000),
      "Cycles of the resource from one stop to the next; or give `between`. They count at rest: station ready, valve neutral, screw full, server free.",
      5000,
    ),
    start: defaulted(
      oneOf({
        running: "The time or the cycles to the first stop are those that are left of an interval under way.",
        fresh: "The first interval begins with the run, as after maintenance.",
      }),
      "stops.*.start",
      "Whether the first interval began before the run or begins with it.",
    ),
    repair: required(drawnTime, "Time of the repair."),
    by: defaulted(
      oneOf({
        itself: "The repair needs no operator.",
        operator: "The repair waits for a free operator, who is busy for that time.",
      }),
      "stops.*.by",
      "Whether the repair takes an operator, and waits for one.",
    ),
    shift: optional(
      oneOf({
        in: "The repair waits for a work shift.",
        any: "The repair goes on at any time; an operator is on call outside the work shifts.",
      }),
      "Whether the repair waits for a work shift. Where absent: `in` for a repair by an operator, `any` for one by itself.",
    ),
    step: defaulted(
      oneOf({
        finish: "The step under way ends first, then the resource stops.",
        hold: "The step under way is held and goes on after the stop.",
        scrap: "The shot under way is lost, and the mold is cleared.",
      }),
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
