// Shifts and breaks on real dates in local wall time, what a start costs, and planned changes.
import { daysOf, weekdays } from "#foundation/civilDate.ts";
import { defaulted, listOf, mapping, optional, required } from "#scenario/values/key.ts";
import { drawnTime } from "#scenario/distributions/distribution.ts";
import { leaf, refused, wrongType, type Leaf } from "#scenario/values/leaf.ts";
import { stepName } from "#scenario/values/nameLeaf.ts";
import { oneOf, patterned, text, wholeNumber } from "#scenario/values/plainLeaf.ts";
import { mass, quantity } from "#scenario/values/quantityLeaf.ts";

const timeOfDay = patterned("^(?:[01][0-9]|2[0-3]):[0-5][0-9]$", "a time of day such as `06:00`");

const expectedDate = "a date such as `2026-03-23`";
const datePattern = "^[0-9]{4}-[0-9]{2}-[0-9]{2}$";
const date: Leaf<string> = leaf({
  expected: expectedDate,
  json: { type: "string", pattern: datePattern },
  read: (written) => {
    if (typeof written !== "string") return refused(wrongType(written, expectedDate));
    if (daysOf(written) !== undefined && written >= "1970") return { value: written };
    const message = `There is no date "${written}".`;
    return refused({ code: "wrong-form", message, expected: expectedDate, remedy: "Write year, month and day." });
  },
});

const shift = mapping(
  () => ({
    name: optional(text("early"), "Name of the shift."),
    days: optional(
      listOf(oneOf(...weekdays), "a list of days such as `[mon, tue]`"),
      "Days on which it starts; all if not given.",
    ),
    start: required(timeOfDay, "Start of the shift."),
    end: required(timeOfDay, "End of the shift; on the next day where it is not after the start."),
    operators: optional(wholeNumber(0, 100), "People on this shift; all of `crew.operators` if not given."),
    breaks: optional(
      listOf(
        mapping(
          () => ({ at: required(timeOfDay, "Start of the break."), time: required(quantity("time"), "Its length.") }),
          "{ at: 09:30, time: 15 min }",
        ),
        "a list of `{ at: 09:30, time: 15 min }`",
      ),
      "Breaks of the operators.",
    ),
  }),
  "{ start: 06:00, end: 14:00 }",
);

const clockChange = mapping(
  () => ({
    on: required(date, "Date on which the clocks are changed."),
    at: required(timeOfDay, "Wall time at which they are changed."),
    by: required(oneOf("1 h", "-1 h"), "An hour on, or an hour back."),
  }),
  "{ on: 2026-03-29, at: 02:00, by: 1 h }",
);

const change = mapping(
  () => ({
    name: required(stepName, "What the change is called in tables."),
    kind: required(
      oneOf("mold", "material", "color"),
      "A mold is changed at one station; material and color in the whole cell.",
    ),
    station: optional(text("left"), "Whose mold is changed."),
    on: optional(date, "Date of the change; or give `after`."),
    at: optional(timeOfDay, "Wall time of the change."),
    after: optional(quantity("time"), "Time from the start of the run to the change."),
    time: required(drawnTime, "Time of the hands' work, purging not counted."),
    residue: optional(
      quantity("share", { above: 0, atMost: 0.5 }),
      "Share of the old material at which parts are good again.",
    ),
  }),
  "{ name: to blue, kind: color, on: 2026-03-25, at: 10:00, time: 40 min, residue: 0.1 % }",
);

/** All at the top of a scenario. */
export const calendarKeys = {
  calendar: optional(
    mapping(
      () => ({
        from: required(date, "Local date on which the run begins."),
        at: defaulted(timeOfDay, "calendar.at", "Wall time at which the run begins."),
        shifts: required(listOf(shift, "a list of shifts"), "Shifts; the rest is off shift."),
        breaks: defaulted(
          oneOf("run on", "stop"),
          "calendar.breaks",
          "Whether the cell runs on through operators' breaks.",
        ),
        clockChanges: optional(
          listOf(clockChange, "a list of changes of the clock"),
          "Changes to and from daylight saving time.",
        ),
      }),
      "{ from: 2026-03-23, shifts: [{ start: 06:00, end: 14:00 }] }",
    ),
    "Shifts and breaks, in local wall time.",
  ),
  startUp: optional(
    mapping(
      () => ({
        afterOff: required(quantity("time", { above: 0 }), "Time at rest after which a start-up is due."),
        heatUp: optional(quantity("time"), "Time to heat up, from the beginning of the shift."),
        purge: optional(mass(), "Melt purged after that."),
        scrap: optional(quantity("cycles"), "Cycles of each station whose parts are rejects."),
      }),
      "{ afterOff: 8 h, heatUp: 2 h, scrap: 20 cycles, purge: 3 kg }",
    ),
    "What a start costs.",
  ),
  changes: optional(listOf(change, "a list of changes"), "Planned changes of mold, material or color."),
};
