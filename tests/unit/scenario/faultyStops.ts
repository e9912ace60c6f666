// Faults of stops, calendars, takeaway and quality; each is an edit of the two-station scenario.
import type { FaultySpec } from "./faultySpec.ts";

const crew = "crew: { operators: 1 }";
const withStops = (stops: string, operators = 1): readonly [string, string] => [
  crew,
  `crew: { operators: ${operators} }\nstops:\n${stops}`,
];

export const faultyStops: readonly FaultySpec[] = [
  {
    name: "a stop of an unknown resource, one without a clock, one with two clocks",
    edits: [
      withStops(`  - { name: band, resource: ¦screw, between: 40 h, repair: 30 min, step: finish }
  - ¦{ name: nozzle, resource: valve, repair: 3 min, step: finish }
  - { name: jam, resource: left, between: 40 h, ¦cycles: 100, repair: 3 min, step: finish }`),
    ],
    found: [
      { code: "stop-resource", path: "stops[0].resource", says: '"screw"', remedy: "`plasticator`" },
      { code: "stop-coming", path: "stops[1].between", says: "Neither", remedy: "cycles: 5000" },
      { code: "stop-coming", path: "stops[2].cycles", says: "Both", remedy: "Delete one" },
    ],
    shape: false,
  },
  {
    name: "a stop with no time between",
    edits: [withStops("  - { name: jam, resource: left, between: ¦0 s, repair: 3 min, step: finish }")],
    found: [
      { code: "not-positive", path: "stops[0].between", says: "comes back at once", remedy: "from the end of one" },
    ],
    shape: false,
  },
  {
    name: "two stops of the same name, one of them for every station",
    edits: [
      withStops(`  - { name: jam, resource: every station, between: 4 h, repair: 3 min, step: finish }
  - { name: ¦jam, resource: left, between: 40 h, repair: 3 min, step: finish }`),
    ],
    found: [{ code: "stop-twice", path: "stops[1].name", says: '"jam"', remedy: "Rename" }],
    shape: false,
  },
  {
    name: "a stop that may lose a shot, without a clear step",
    edits: [
      ["right\n    cavities: 2\n    steps:\n      ", "right\n    cavities: 2\n    ¦steps:\n      "],
      ["left\n    cavities: 2\n    steps:\n      ", "left\n    cavities: 2\n    ¦steps:\n      "],
      withStops("  - { name: jam, resource: left, between: 40 h, repair: 3 min }"),
    ],
    found: [
      { code: "clear-missing", path: "stations.right.steps.clear", says: "may lose", remedy: "step: finish" },
      { code: "clear-missing", path: "stations.left.steps.clear", says: "may lose", remedy: "step: finish" },
    ],
    shape: false,
  },
  {
    name: "a repair on shift without a calendar",
    edits: [withStops("  - { name: jam, resource: left, between: 40 h, repair: 3 min, ¦shift: in, step: finish }")],
    found: [
      {
        code: "shift-unused",
        path: "stops[0].shift",
        says: "no time off shift",
        remedy: "add a `calendar`",
        severity: "hint",
      },
    ],
    shape: false,
  },
  {
    name: "a repair by operator without operators",
    edits: [
      ["by: operator", "by: machine"],
      withStops("  - { name: jam, resource: left, between: 40 h, repair: 3 min, by: ¦operator, step: finish }", 0),
    ],
    found: [
      { code: "operator-missing", path: "stops[0].by", says: "there is none", remedy: "operators: 1", fate: "cell" },
    ],
    shape: false,
  },
];

export const faultyCalendar: readonly FaultySpec[] = [
  {
    name: "shifts on days that the run never reaches",
    edits: [
      [
        crew,
        `${crew}
¦calendar: { from: 2026-03-23, shifts: [{ days: [sat], start: "06:00", end: "14:00" }] }`,
      ],
    ],
    found: [{ code: "never-on-shift", path: "calendar", says: "No shift", remedy: "longer" }],
    shape: false,
  },
  {
    name: "more work shifts and breaks in a run than can be computed",
    edits: [
      [
        crew,
        `crew: { operators: 100 }
calendar:
  from: 2026-03-23
  ¦shifts: [{ start: "06:00", end: "14:00", breaks: [{ at: "09:00", time: 15 min }] }]`,
      ],
      ["run: { length: 8 h", "run: { length: 9901 d"],
    ],
    // 9,901 days × (1 shift + 1 break) × (the cell + 100 operators).
    found: [{ code: "calendar-too-long", path: "calendar.shifts", says: "2000002", remedy: "shorter" }],
    shape: false,
  },
  {
    name: "a wrong date and a wrong time of day",
    edits: [
      [
        crew,
        `${crew}
calendar: { from: ¦2026-02-30, shifts: [{ start: ¦"25:00", end: "14:00" }] }`,
      ],
    ],
    found: [
      { code: "wrong-form", path: "calendar.from", says: '"2026-02-30"', remedy: "year, month and day" },
      { code: "wrong-form", path: "calendar.shifts[0].start", says: '"25:00"', remedy: "`06:00`" },
    ],
    shape: true,
  },
  {
    name: "changes without a known station, a calendar or a purge mass",
    edits: [
      [
        crew,
        `${crew}
changes:
  - { name: one, kind: mold, station: ¦lefft, after: 2 h, time: 1 h }
  - ¦{ name: two, kind: color, on: 2026-03-24, at: "10:00", time: 1 h }
  - { name: three, kind: color, after: 3 h, time: 1 h, residue: ¦1 % }`,
      ],
    ],
    found: [
      { code: "change-station", path: "changes[0].station", says: "whose mold", remedy: "`left`" },
      { code: "change-when", path: "changes[1].after", says: "needs a calendar", remedy: "after: 36 h" },
      { code: "change-purge", path: "changes[2].residue", says: "not known", remedy: "manifoldHoldUp" },
    ],
    shape: false,
  },
];

export const faultyTakeaway: readonly FaultySpec[] = [
  {
    name: "a server with a reserved name, one by operator without operators, a repeated task",
    edits: [
      ["by: operator", "by: machine"],
      [
        crew,
        `crew: { operators: 0, priorities: [removal, ¦removal] }
takeaway:
  ¦valve: { time: 2 s }
  pack: { time: 2 s, by: ¦operator }`,
      ],
    ],
    found: [
      { code: "task-twice", path: "crew.priorities[1]", says: '"removal"', remedy: "Keep one" },
      { code: "name-reserved", path: "takeaway.valve", says: '"valve"', remedy: "trimmer" },
      {
        code: "operator-missing",
        path: "takeaway.pack.by",
        says: "there is none",
        remedy: "operators: 1",
        fate: "cell",
      },
    ],
    shape: false,
  },
  {
    name: "a quality check at the mold of parts removed by a pin",
    edits: [
      ["kind: reciprocating-screw", "kind: continuous\n  removal: pin"],
      ["  deliveryRate: 420 kg/h\n  shotCapacity: 0.40 kg\n  rechargeStarts: valve-neutral\n", ""],
      ["valve: { shift: 0.30 s, dispatch: first-ready }\n", ""],
      ["by: operator", "by: machine"],
      [
        "right\n    cavities: 2\n    steps:\n",
        "right\n    cavities: 2\n    steps:\n      travelIn: 0.7 s\n      cut: 0.1 s\n      travelOut: 0.7 s\n",
      ],
      [
        "left\n    cavities: 2\n    steps:\n",
        "left\n    cavities: 2\n    steps:\n      travelIn: 0.7 s\n      cut: 0.1 s\n      travelOut: 0.7 s\n",
      ],
      [crew, `${crew}\nquality: { rejects: 1 % }\n¦takeaway: { pack: { time: 1 s } }`],
    ],
    found: [{ code: "mask-takeaway", path: "takeaway", says: "all together", remedy: "removal: mold" }],
    shape: false,
  },
];

const withServers = (servers: string, crewKeys = "operators: 1"): readonly [string, string] => [
  crew,
  `crew: { ${crewKeys} }\ntakeaway:\n${servers}`,
];

export const faultyServers: readonly FaultySpec[] = [
  {
    name: "servers with more places than can be computed",
    edits: [
      [
        crew,
        `${crew}
¦takeaway:
  rack: { time: 200 s, places: 200, perStation: yes }
  second rack: { time: 200 s, places: 200, perStation: yes }
  third rack: { time: 200 s, places: 200, perStation: yes }
  fourth rack: { time: 200 s, places: 200, perStation: yes }
  fifth rack: { time: 200 s, places: 200, perStation: yes }
  trimmer: { time: 2 s }`,
      ],
    ],
    // 5 × 200 for each of two stations, and one.
    found: [{ code: "places-too-many", path: "takeaway", says: "2001 places", remedy: "fewer places" }],
    shape: false,
  },
  {
    name: "a server with the name of a station",
    edits: [withServers("  ¦left: { time: 2 s }")],
    found: [{ code: "server-twice", path: "takeaway.left", says: '"left"', remedy: "Rename" }],
    shape: false,
  },
  {
    name: "a mapping with a key that is no valid name",
    edits: [withServers('  ¦"1st trimmer": { time: 2 s }\n  ¦trimmer: { buffer: 3 }')],
    found: [
      { code: "name-form", path: "takeaway.1st trimmer", says: "1st", remedy: "Begin with a letter" },
      { code: "missing", path: "takeaway.trimmer.time", says: "`time`", remedy: "Add" },
    ],
    shape: true,
  },
  {
    name: "packing by operator without operators",
    edits: [["by: operator", "by: machine"], withServers("  packing: { time: 2 s, by: ¦operator }", "operators: 0")],
    found: [
      {
        code: "operator-missing",
        path: "takeaway.packing.by",
        says: "there is none",
        remedy: "by: machine",
        fate: "cell",
      },
    ],
    shape: false,
  },
  {
    name: "a mask per station after a shared server, and an impossible age",
    edits: [
      withServers(`  conveyor: { time: 20 s, places: 10, buffer: 2 }
  trimmer: { time: 2 s, minAge: ¦60 s, maxAge: 30 s }
  mask cooling: { time: 9 s, perStation: ¦yes }`),
    ],
    found: [
      { code: "values-contradict", path: "takeaway.trimmer.minAge", says: "old enough", remedy: "slip" },
      { code: "server-order", path: "takeaway.mask cooling.perStation", says: "each station's own", remedy: "earlier" },
    ],
    shape: false,
  },
  {
    name: "ages after a server that changes the order of parts",
    edits: [
      withServers(`  conveyor: { time: { uniform: [10 s, 20 s] }, places: 10 }
  ¦trimmer: { time: 2 s, minAge: 60 s }`),
    ],
    found: [{ code: "server-order", path: "takeaway.trimmer", says: "age of parts", remedy: "earlier" }],
    shape: false,
  },
  {
    name: "ages with a buffer above the limit",
    edits: [withServers("  trimmer: { time: 2 s, minAge: 60 s, buffer: ¦1000 }")],
    found: [{ code: "out-of-range", path: "takeaway.trimmer.buffer", says: "1001 parts", remedy: "smaller" }],
    shape: false,
  },
  {
    name: "neither yes nor no, and an unknown task",
    edits: [
      withServers("  trimmer: { time: 2 s, perStation: ¦maybe }", "operators: 1, priorities: [removal, ¦sweeping]"),
    ],
    found: [
      { code: "unknown-choice", path: "crew.priorities[1]", says: '"sweeping"', remedy: "packing" },
      { code: "wrong-type", path: "takeaway.trimmer.perStation", says: "a text", remedy: "yes" },
    ],
    shape: true,
  },
];

export const faultyQuality: readonly FaultySpec[] = [
  {
    name: "limits that both exclude the mean",
    edits: [[crew, `${crew}\nquality: { lightest: ¦43 g, heaviest: ¦41 g, shotSpread: 1 % }`]],
    found: [
      { code: "limits-miss-mean", path: "quality.lightest", says: "42 g, is below", remedy: "Lower" },
      { code: "limits-miss-mean", path: "quality.heaviest", says: "42 g, is above", remedy: "Raise" },
    ],
    shape: false,
  },
  {
    name: "a limit of the demold temperature without the thickest place",
    edits: [
      [", thickest: 1.3 mm }", " }"],
      [crew, `${crew}\nquality: { maxDemold: ¦80 °C }`],
    ],
    found: [{ code: "demold-unknown", path: "quality.maxDemold", says: "right cool", remedy: "Give both" }],
    shape: false,
  },
  {
    name: "a limit of the demold temperature above the melt temperature",
    edits: [[crew, `${crew}\nquality: { maxDemold: ¦300 °C }`]],
    found: [{ code: "demold-outside", path: "quality.maxDemold", says: "300 °C is not between", remedy: "between" }],
    shape: false,
  },
  {
    name: "a limit of the demold temperature where the mold gets hotter with its load",
    edits: [
      ["- name: left", "- moldResistance: 0.01 K/W\n    name: left"],
      [crew, `${crew}\nquality: { maxDemold: ¦80 °C }`],
    ],
    found: [{ code: "demold-mold-varies", path: "quality.maxDemold", says: "of left", remedy: "running rate" }],
    shape: false,
  },
  {
    name: "limits without a spread",
    edits: [[crew, `${crew}\n¦quality: { lightest: 41 g }`]],
    found: [
      { code: "mass-unjudged", path: "quality", says: "every part has the mean", remedy: "Add it", severity: "hint" },
    ],
    shape: false,
  },
];
