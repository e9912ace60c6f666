// Shifts and breaks on real dates in local wall time, what a start costs, and planned changes.
import { daysOf, type Weekday } from "#foundation/civilDate.ts";
import { defaulted, listOf, mapping, optional, required } from "#scenario/values/key.ts";
import { drawnTime } from "#scenario/distributions/distribution.ts";
import { leaf, refused, wrongType, type Leaf } from "#scenario/values/leaf.ts";
import { stepName } from "#scenario/values/nameLeaf.ts";
import { oneOf, patterned, text, wholeNumber } from "#scenario/values/plainLeaf.ts";
import { mass, quantity } from "#scenario/values/quantityLeaf.ts";

const timeOfDay = patterned("^(?:[01][0-9]|2[0-3]):[0-5][0-9]$", "a time of day", "06:00");

const expectedDate = "a date such as `2026-03-23`";
const datePattern = "^[0-9]{4}-[0-9]{2}-[0-9]{2}$";
const date: Leaf<string> = leaf({
  expected: expectedDate,
  json: { title: "a date", type: "string", pattern: datePattern },
  read: (written) => {
    if (typeof written !== "string") return refused(wrongType(written, expectedDate));
    if (daysOf(written) !== undefined && written >= "1970") return { value: written };
    const message = `There is no date "${written}".`;
    return refused({ code: "wrong-form", message, expected: expectedDate, remedy: "Write year, month and day." });
  },
});

const expectedInstant = "a local date and time such as `2026-03-29 14:00`";
const instantPattern = "^[0-9]{4}-[0-9]{2}-[0-9]{2} (?:[01][0-9]|2[0-3]):[0-5][0-9]$";
export const localInstant: Leaf<string> = leaf({
  expected: expectedInstant,
  json: { title: "a local date and time", type: "string", pattern: instantPattern, examples: ["2026-03-29 14:00"] },
  read: (written) => {
    if (typeof written !== "string") return refused(wrongType(written, expectedInstant));
    const isInstant = new RegExp(instantPattern, "u").test(written) && daysOf(written.slice(0, 10)) !== undefined;
    if (isInstant && written >= "1970") return { value: written };
    const message = `"${written}" is no date with a time of day.`;
    const remedy = "Write year, month, day, hour and minute.";
    return refused({ code: "wrong-form", message, expected: expectedInstant, remedy });
  },
});

const weekdayNames: Readonly<Record<Weekday, string>> = {
  mon: "Monday.",
  tue: "Tuesday.",
  wed: "Wednesday.",
  thu: "Thursday.",
  fri: "Friday.",
  sat: "Saturday.",
  sun: "Sunday.",
};

const shift = mapping(
  () => ({
    name: optional(text("early"), "Name of the work shift."),
    days: optional(
      listOf(oneOf(weekdayNames), "a list of days such as `[mon, tue]`"),
      "Days on which it starts; all where absent.",
    ),
    start: required(timeOfDay, "Start of the work shift."),
    end: required(timeOfDay, "End of the work shift; on the next day where it is not after the start."),
    operators: optional(wholeNumber(0, 100), "Operators on this work shift; all of `crew.operators` where absent."),
    breaks: optional(
      listOf(
        mapping(
          () => ({
            at: required(timeOfDay, "Start of the break."),
            time: required(quantity("time"), "Length of the break."),
          }),
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
    by: required(
      oneOf({ "1 h": "Clocks are put on: summer time begins.", "-1 h": "Clocks are put back: summer time ends." }),
      "An hour on, or an hour back.",
    ),
  }),
  "{ on: 2026-03-29, at: 02:00, by: 1 h }",
);

const change = mapping(
  () => ({
    name: required(stepName, "What the change is called in tables."),
    kind: required(
      oneOf({
        mold: "The mold of one station is changed; the others run on.",
        material: "The material of the whole cell is changed; the screw and all manifolds are purged.",
        color: "The color of the whole cell is changed; the screw and all manifolds are purged.",
      }),
      "A mold is changed at one station; material and color in the whole cell.",
    ),
    station: optional(text("left"), "Station whose mold is changed."),
    to: optional(
      text("blue bottle"),
      "Product of `orders` before which the change is made, where another product was made; or give `on` or `after`.",
    ),
    on: optional(date, "Date of the change; or give `after`."),
    at: optional(timeOfDay, "Wall time of the change."),
    after: optional(quantity("time"), "Time from the start of the run to the change; or give `on` and `at`.", "36 h"),
    time: required(drawnTime, "Time of the manual work, without purging."),
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
        shifts: required(listOf(shift, "a list of shifts"), "Work shifts; all other time is off shift."),
        breaks: defaulted(
          oneOf({
            "run on": "The cell runs on; what needs an operator waits for the end of the break.",
            stop: "The cell pauses with its operators.",
          }),
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
    "Work shifts and breaks, in local wall time.",
  ),
  startUp: optional(
    mapping(
      () => ({
        afterOff: required(quantity("time", { above: 0 }), "Time at rest after which a start-up is due."),
        heatUp: optional(quantity("time"), "Time to heat up, from the beginning of the shift."),
        purge: optional(mass(), "Melt purged after the heating."),
        scrap: optional(quantity("cycles"), "Cycles of each station whose parts are rejects."),
      }),
      "{ afterOff: 8 h, heatUp: 2 h, scrap: 20 cycles, purge: 3 kg }",
    ),
    "What a start costs.",
  ),
  changes: optional(listOf(change, "a list of changes"), "Planned changes of mold, material or color."),
};
