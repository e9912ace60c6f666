// Keys whose meaning is fixed but whose working is not built yet: read and checked for form, then refused by name.
import { listOf, mapping, optional, required } from "./key.ts";
import { timeLaw } from "./law.ts";
import { oneOf, patterned, text, wholeNumber } from "./plainLeaf.ts";
import { mass, quantity } from "./quantityLeaf.ts";

const timeOfDay = patterned("^(?:[01][0-9]|2[0-3]):[0-5][0-9]$", "a time of day such as `06:00`");

const shift = mapping(
  {
    name: optional(text("early"), "Name of the shift."),
    days: optional(
      listOf(oneOf("mon", "tue", "wed", "thu", "fri", "sat", "sun"), "a list of days such as `[mon, tue]`"),
      "Days.",
    ),
    start: required(timeOfDay, "Start of the shift."),
    end: required(timeOfDay, "End of the shift."),
    operators: optional(wholeNumber(0, 100), "People on this shift."),
    breaks: optional(
      listOf(
        mapping(
          { at: required(timeOfDay, "Start of the break."), time: required(quantity("time"), "Its length.") },
          "{ at: 09:30, time: 15 min }",
        ),
        "a list of `{ at: 09:30, time: 15 min }`",
      ),
      "Breaks of the operators.",
    ),
  },
  "{ start: 06:00, end: 14:00 }",
);

const change = mapping(
  {
    kind: required(oneOf("mold", "material", "color"), "What is changed."),
    to: optional(text("bottle"), "Product to change to."),
    every: optional(quantity("time", { above: 0 }), "How often."),
    time: required(timeLaw, "How long it takes."),
    residue: optional(quantity("share", { above: 0 }), "Share of the old color at which parts are good again."),
  },
  "{ kind: color, time: 40 min }",
);

/** All at the top of a scenario. */
export const laterKeys = {
  calendar: optional(
    mapping(
      {
        shifts: optional(listOf(shift, "a list of shifts"), "Shifts; the rest is off shift."),
        breaks: optional(oneOf("run on", "stop"), "Whether an automatic cell runs on through operators' breaks."),
      },
      "{ shifts: … }",
    ),
    "Shifts and breaks. Not built yet.",
  ),
  startUp: optional(
    mapping(
      {
        afterOff: optional(quantity("time"), "Time off after which a start-up is due."),
        heatUp: optional(quantity("time"), "Time to heat up."),
        scrap: optional(quantity("cycles"), "Cycles of scrap."),
        purge: optional(mass(), "Melt purged."),
      },
      "{ afterOff: 8 h, heatUp: 2 h, scrap: 20 cycles, purge: 3 kg }",
    ),
    "What a start costs. Not built yet.",
  ),
  changes: optional(listOf(change, "a list of changes"), "Changes of mold, material or color. Not built yet."),
};
