// Every message code of reading a scenario, with meaning and remedy.

import type { IssueMeaning } from "#foundation/issue.ts";

export const issueCodes = {
  // The text.
  "file-binary": ["the file is no text", "Save the scenario as plain text in UTF-8."],
  "file-empty": ["the file holds nothing, or only comments", "Write a scenario, or begin with `blowcell new`."],
  "file-encoding": ["the file is not UTF-8", "Save the file as UTF-8; editors offer it as the encoding when saving."],
  "file-too-large": [
    "the file is longer than 250,000 characters",
    "Check that it is the right file; measured values belong in a CSV file.",
  ],
  "yaml-anchor": [
    "an anchor, alias or merge key is used; values are written out",
    "Write the values out where they are needed.",
  ],
  "yaml-depth": ["brackets or lists are nested too deeply", "Check the brackets: one is probably not closed."],
  "yaml-directive": ["a `%` directive is used", "Delete the line that begins with `%`."],
  "yaml-documents": ["the file holds more than one document", "Keep one document a file; delete the line `---`."],
  "yaml-key": ["a list, a mapping or a reserved word is used as a key", "Use a plain word as key."],
  "yaml-syntax": ["the text is not well-formed YAML", "Check indentation, colons, brackets and quotes near the place."],
  "yaml-tab": ["a tab is used to indent", "Indent with spaces."],
  "yaml-tag": ["a tag such as `!!str` is used", "Delete the tag."],
  "duplicate-key": ["a key stands in one mapping twice", "Delete one of the two keys, or rename it."],
  // Keys and values.
  "format-missing": ["the format is not stated; 1 is assumed", "Add `format: 1`."],
  "format-newer": ["the file is written for a newer version", "Get a newer blowcell, or write the file for format 1."],
  "format-unknown": ["there is no such format", "Write `format: 1`."],
  "list-empty": ["a list has no entries", "Add an entry, or delete the key."],
  "list-too-long": ["a list has more entries than any cell could have", "Check that the entries belong there."],
  missing: ["a key that is needed is absent", "Add the key; the message names it with an example."],
  "name-form": [
    "a name has characters that a path or a table cannot hold",
    "Begin with a letter; use no dots, brackets, quotes, equals signs or marks of direction.",
  ],
  "name-reserved": ["a name already means something in the tables", "Choose another name."],
  "more-faults": ["there are more faults than are shown", "Correct those that are shown, then check again."],
  "not-whole": ["a whole number is needed", "Write a whole number."],
  "old-word": ["a word of an earlier version is used; it still works", "Write the word that the message names."],
  "out-of-range": ["a number is outside its range", "Write a number within the range that the message names."],
  "task-twice": ["a task of the crew is named twice", "Delete one of the two."],
  "unknown-choice": ["the word is none of those that may stand here", "Write one of the words that the message names."],
  "unknown-key": ["the key is not known where it stands", "Correct the spelling, or move the key to where it belongs."],
  "value-missing": ["nothing stands behind the key", "Write a value, or delete the key."],
  "wrong-form": ["a text has another form than is needed here", "Write it in the form that the message names."],
  "wrong-type": [
    "a list stands where a text is needed, or the like",
    "Write a value of the type that the message names.",
  ],
  // Quantities.
  "decimal-comma": ["a number has a decimal comma", "Write numbers with a decimal point."],
  "mass-too-fine": ["a mass is no whole number of milligrams", "Round the mass to a milligram."],
  negative: ["a quantity is below zero", "Write zero or more."],
  "not-a-number": ["a quantity cannot be read as a number", "Write a number and a unit, such as `7.5 s`."],
  "not-positive": ["a quantity must be above zero", "Write more than zero."],
  "share-of-what": ["a share of flash does not say of what", "Write `30 % of part` or `30 % of shot`."],
  "thousands-separator": ["a number has a thousands separator", "Write the number without separators."],
  "time-unusual": [
    "a step takes far more or less time than in any blow molding cell",
    "Check the unit: seconds, milliseconds and minutes are easily mixed up.",
  ],
  "too-large": ["a quantity is too large to calculate with", "Check the number and the unit."],
  "too-small": ["a quantity is too small to calculate with", "Check the number and the unit."],
  "unit-mismatch": ["a unit measures something else", "Use a unit of the quantity that the key needs."],
  "unit-missing": ["a number has no unit", "Write the unit after the number, such as `7.5 s`."],
  "unit-unknown": ["a unit is not known", "Use one of the units that `blowcell explain units` lists."],
  // Distributions and their columns.
  "csv-broken": ["a CSV file is not well-formed", "Check the quotes in the line that the message names."],
  "csv-column": ["a CSV file has no such column", "Write the name of a column in the header row."],
  "csv-empty": ["a column has no values", "Check the file and the column."],
  "csv-gaps": ["cells of a column are empty and are left out", "Fill in the values that were measured."],
  "csv-missing": ["a CSV file cannot be read", "Put the file beside the scenario, or correct its name."],
  "csv-more": ["a column has more faults than are shown", "Correct those that are shown, then check again."],
  "distribution-count": ["a distribution has no name, or several", "Keep one distribution."],
  "distribution-length": [
    "a distribution has too many or too few values",
    "Give the values in the order that the message names.",
  ],
  "distribution-order": ["the values of a distribution do not rise", "Put the smallest value first."],
  "distribution-shape": [
    "the shape of a distribution is outside the supported range",
    "Use a shape within the range, or measured values (`empirical`).",
  ],
  "distribution-spread": [
    "the spread of a distribution is zero, or far above its mean",
    "Check mean and standard deviation; for no spread write the mean alone.",
  ],
  "distribution-unknown": [
    "there is no such distribution",
    "Use one of the distributions that `blowcell explain distribution` lists.",
  ],
  // What must fit together.
  "change-purge": [
    "a change is to purge, and how much melt there is is not known",
    "Add `delivery.holdUp` and `delivery.manifoldHoldUp`.",
  ],
  "change-station": [
    "a change of a mold names no station, or another change names one",
    "Name the station for a change of mold, and none for material or color.",
  ],
  "change-to": [
    "a change before an order names no product, or has a date",
    "Name a product of `products`, without a date.",
  ],
  "change-when": ["a change says twice, or not at all, when it comes", "Give `on` and `at`, or `after`, not both."],
  "run-until": [
    "the end of the run is given twice, without a calendar, or before its start",
    "Give `run.until` with a calendar, or `run.length`.",
  ],
  "clear-missing": [
    "a stop may lose a shot, and nothing says how the mold is cleared",
    "Add `steps.clear`, such as `{ time: 90 s, by: operator }`.",
  ],
  "extra-after": [
    "an extra step follows a step that is not there",
    "Name a step of the cycle, or an extra step listed before.",
  ],
  "extra-twice": ["two extra steps of a station have one name", "Rename one of them."],
  "flash-assumed": [
    "flash is not stated though rates are used; none is assumed",
    "Add `flash`, or `flash: 0 g` if there is none.",
  ],
  "limits-miss-mean": [
    "the mean mass of a part is outside the limits of a good one",
    "Change the limit, or correct the mass of the part.",
  ],
  "demold-unknown": [
    "a limit of the demold temperature where the cooling of the parts is not known",
    "Give the material and the thickest place of the wall, or delete the limit.",
  ],
  "demold-mold-varies": [
    "a limit of the demold temperature where the mold temperature follows the heat load",
    "Give the mold temperature at the running rate without `moldResistance`, or delete the limit.",
  ],
  "demold-outside": [
    "a limit of the demold temperature that is not between mold and melt temperature",
    "Write a temperature between them, such as the demold temperature of the product.",
  ],
  "mass-unjudged": [
    "limits of mass without a spread, or a spread without limits",
    "Add the other of the two, or delete both.",
  ],
  "calendar-too-long": [
    "a run has more work shifts and breaks than can be computed",
    "Make the run shorter, or give fewer shifts and breaks.",
  ],
  "never-on-shift": ["no shift falls into the run", "Make the run longer, or begin it at another date or time."],
  "next-unknown": [
    "the next station is not known beforehand: `shotFor: next`, or different parisons in continuous extrusion, need a rotation",
    "Write `valve.dispatch: alternate`.",
  ],
  "other-kind": ["a key belongs to another kind of melt delivery", "Delete the key, or change `delivery.kind`."],
  "mask-takeaway": [
    "parts that a pin carries to a mask cannot be judged at the mold and passed on one by one",
    "Write `removal: mold`, or move the check to a server of the takeaway.",
  ],
  "operator-missing": [
    "an operator is to take parts out, but there is none",
    "Add `crew: { operators: 1 }`, or write `by: machine`.",
  ],
  "order-incomplete": ["the order leaves out a station", "Add the missing stations to `order`."],
  "order-twice": ["the order names a station twice", "Delete one of the two."],
  "order-unknown": ["the order names a station that is not there", "Correct the name."],
  "priority-unused": [
    "stations have priorities that the dispatch rule does not look at",
    "Write `dispatch: priority`, or delete the priorities.",
  ],
  "product-and-products": ["both `product` and `products` are given", "Keep one of the two."],
  "product-unknown": ["a station names a product that is not there", "Correct the name."],
  "material-unknown": [
    "the material is not in the catalog",
    "Name the nearest material of the catalog and give the values that differ.",
  ],
  "due-calendar": [
    "a due date is given and there is no calendar",
    "Add `calendar`, or call with `--shifts` and `--start`.",
  ],
  "due-differs": ["orders have different due dates", "Give all orders one due date, or promise each by itself."],
  "due-form": [
    "a due date cannot be read",
    "Write a local date and time, a time after the start, or a weekday with a time.",
  ],
  "due-past": ["a due date is not after the start of the run", "Give a later due date, or an earlier start."],
  "order-form": ["an order is no whole number of parts", "Write a whole number of parts, such as `200000 parts`."],
  "order-product": ["an order names no product of the cell", "Write a product of `products`."],
  "shifts-form": ["a pattern of work shifts cannot be read", 'Write a pattern such as "2 x 8 h, mon-fri".'],
  "chance-range": ["the wanted chance is no share above 0 and below 100 %", "Write a share such as 95 %."],
  "start-missing": ["work shifts are given without the date at which the run begins", "Add `--start`."],
  "start-form": ["a start cannot be read", "Write a local date and time, such as `2026-11-30 06:00`."],
  "product-which": ["a station does not say which of several products it makes", "Add `product` to the station."],
  "range-unused": [
    "a screw of fixed rate has a range, which is not used",
    "Delete `rateRange`, or write `rate: matched`.",
  ],
  "rate-and-time": ["both a rate and a measured time are given for one thing", "Keep the rate or the measured time."],
  "shot-above-capacity": [
    "a shot is larger than the screw can hold",
    "Use fewer cavities, or a larger screw or accumulator.",
  ],
  "shift-unused": [
    "a stop says whether its repair waits for a shift, and there is no calendar",
    "Add a `calendar`, or delete `shift`.",
  ],
  "stop-coming": ["a stop says twice, or not at all, when it comes", "Give `between` or `cycles`, not both."],
  "stop-resource": [
    "a stop names a resource that is not there",
    "Name the plasticator, the valve, a station or a server.",
  ],
  "stop-twice": ["two stops of one resource have one name", "Rename one of them."],
  "option-twice": ["two options have one name", "Rename one of them."],
  "option-path": ["two options that are combined set one path", "Put both into one group, or let one of them set it."],
  "option-currency": ["an option has a price, and the scenario has no costs", "Add `costs.currency` and the rates."],
  "server-order": [
    "a server is in a place where its keys have no effect",
    "Change the order of the servers, or the keys that the message names.",
  ],
  "places-too-many": [
    "the servers of the takeaway have more places than can be computed",
    "Give the servers fewer places, or leave servers out.",
  ],
  "server-twice": ["a server has the name of a station", "Rename the server or the station."],
  "station-twice": ["two stations have one name", "Rename one of them."],
  "too-many-stations": ["the cell has more stations than are supported", "Take some stations out."],
  "values-contradict": ["a value that must be below another is not", "Check both values for a typing error."],
  "vent-zero": ["the mold would open under blow pressure", "Give the time until the pressure has fallen."],
  "warmup-too-long": ["the warm-up takes the whole run", "Make the run longer or the warm-up shorter."],
  "zero-cycle": ["nothing in a cycle takes any time", "Give the times of the steps."],
  // --set.
  "set-form": [
    "a --set is not of the form `path=value`",
    'Write `--set path=value`, such as `--set "run.length=4 h"`.',
  ],
  "set-move": ["a --set moves what cannot be moved", "Give the new value as a whole."],
  "set-spread": [
    "a --set replaces a distribution by a constant, so the step no longer varies",
    "Use a move such as `-1 s` or `+10 %` to keep the spread, or give a distribution.",
  ],
  "set-path": [
    "the path of a --set leads nowhere",
    "Use a path as errors show it, such as `stations.left.steps.cool`.",
  ],
} as const satisfies Readonly<Record<string, IssueMeaning>>;

export type IssueCode = keyof typeof issueCodes;
