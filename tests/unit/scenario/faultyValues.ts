// Faults of single keys and values; each is an edit of the two-station scenario.
import type { FaultySpec } from "./faultySpec.ts";

const cool = "cool: { triangular: [7.0 s, 7.5 s, 9.0 s] }";

export const faultyValues: readonly FaultySpec[] = [
  {
    name: "a material that is not in the catalogue",
    edits: [["material: HDPE", "material: ¦HDPD"]],
    found: [{ code: "material-unknown", path: "product.material", says: '"HDPD"', remedy: "`HDPE`" }],
    shape: false,
  },
  {
    name: "a time without a unit",
    edits: [["close: 0.6 s", "close: ¦0.6"]],
    found: [{ code: "unit-missing", path: "stations.right.steps.close", says: "0.6 has no unit", remedy: "`0.6 s`" }],
    shape: true,
  },
  {
    name: "zero without a unit",
    edits: [["vent: 0.5 s", "vent: ¦0"]],
    found: [{ code: "unit-missing", path: "stations.right.steps.vent", says: "0 has no unit", remedy: "`0 s`" }],
    shape: true,
  },
  {
    name: "a decimal comma in a plain value",
    edits: [["close: 0.6 s", "close: ¦0,6 s"]],
    found: [{ code: "decimal-comma", path: "stations.right.steps.close", says: "decimal comma", remedy: "`0.6 s`" }],
    shape: true,
  },
  {
    name: "a decimal comma in a list, which becomes one value too long",
    edits: [["[7.0 s, 7.5 s, 9.0 s]", "[7.0 s, ¦7,5 s, 9.0 s]"]],
    found: [
      { code: "decimal-comma", path: "stations.right.steps.cool.triangular[1]", says: "7,5 s", remedy: "`7.5 s`" },
    ],
    shape: true,
  },
  {
    name: "a decimal comma that makes two values of one",
    edits: [[cool, "cool: { uniform: [¦7,5 s] }"]],
    found: [{ code: "decimal-comma", path: "stations.right.steps.cool.uniform[0]", says: "7,5 s", remedy: "`7.5 s`" }],
    shape: true,
  },
  {
    name: "a decimal comma in a mapping on one line, which makes a key of the rest",
    edits: [["wall: { mean: 0.9 mm,", "wall: { mean: ¦0,¦9 mm,"]],
    found: [
      { code: "unit-missing", path: "product.wall.mean", says: "0 has no unit", remedy: "`0 mm`" },
      { code: "decimal-comma", path: "product.wall.9 mm", says: "9 mm", remedy: "decimal point" },
    ],
    shape: true,
  },
  {
    name: "a decimal comma in a distribution of one value",
    edits: [[cool, "cool: { exponential: 7,¦5 s }"]],
    found: [{ code: "decimal-comma", path: "stations.right.steps.cool.5 s", says: "5 s", remedy: "decimal point" }],
    shape: true,
  },
  {
    name: "thousands separated by a comma",
    edits: [["deliveryRate: 420 kg/h", "deliveryRate: ¦1,420 kg/h"]],
    found: [{ code: "thousands-separator", path: "delivery.deliveryRate", says: "1,420", remedy: "`1420 kg/h`" }],
    shape: true,
  },
  {
    name: "a unit of another dimension",
    edits: [["plasticatingRate: 110 kg/h", "plasticatingRate: ¦110 kg"]],
    found: [{ code: "unit-mismatch", path: "delivery.plasticatingRate", says: "a mass", remedy: "lb/h" }],
    shape: true,
  },
  {
    name: "an unknown unit",
    edits: [["plasticatingRate: 110 kg/h", "plasticatingRate: ¦110 kg/hour"]],
    found: [{ code: "unit-unknown", path: "delivery.plasticatingRate", says: "kg/hour", remedy: "`110 kg/hr`" }],
    shape: true,
  },
  {
    name: "a negative time",
    edits: [["blow: 0.5 s", "blow: ¦-0.5 s"]],
    found: [{ code: "negative", path: "stations.right.steps.blow", says: "negative", remedy: "0 or more" }],
    shape: true,
  },
  {
    name: "a minus sign from a word processor",
    edits: [["blow: 0.5 s", "blow: ¦−0.5 s"]],
    found: [{ code: "negative", path: "stations.right.steps.blow", says: "minus sign", remedy: "0 or more" }],
    shape: true,
  },
  {
    name: "a number with two points",
    edits: [["blow: 0.5 s", "blow: ¦1.5.2 s"]],
    found: [{ code: "not-a-number", path: "stations.right.steps.blow", says: "1.5.2 s", remedy: "plain number" }],
    shape: true,
  },
  {
    name: "a time of day in place of a time",
    edits: [["length: 8 h", "length: ¦8:30"]],
    found: [{ code: "not-a-number", path: "run.length", says: "8:30", remedy: "one unit" }],
    shape: true,
  },
  {
    name: "YAML's .nan",
    edits: [["blow: 0.5 s", "blow: ¦.nan"]],
    found: [{ code: "not-a-number", path: "stations.right.steps.blow", says: "NaN", remedy: "plain number" }],
    shape: true,
  },
  {
    name: "a number that overflows",
    edits: [["length: 8 h", "length: ¦1e400 h"]],
    found: [{ code: "too-large", path: "run.length", says: "1e400", remedy: "exponent" }],
    shape: false,
  },
  {
    name: "a run of more than a hundred years",
    edits: [["length: 8 h", "length: ¦40000 d"]],
    found: [{ code: "too-large", path: "run.length", says: "40000 d", remedy: "unit" }],
    shape: false,
  },
  {
    name: "a number that underflows to zero",
    edits: [["blow: 0.5 s", "blow: ¦1e-400 s"]],
    found: [{ code: "too-small", path: "stations.right.steps.blow", says: "1e-400", remedy: "exponent" }],
    shape: false,
  },
  {
    name: "a run of length 0",
    edits: [["length: 8 h", "length: ¦0 h"]],
    found: [{ code: "not-positive", path: "run.length", says: "0 h", remedy: "more than 0" }],
    shape: false,
  },
  {
    name: "a rate of zero",
    edits: [["plasticatingRate: 110 kg/h", "plasticatingRate: ¦0 kg/h"]],
    found: [{ code: "not-positive", path: "delivery.plasticatingRate", says: "0 kg/h", remedy: "more than 0" }],
    shape: false,
  },
  {
    name: "a part without mass",
    edits: [["partMass: 42 g", "partMass: ¦0 g"]],
    found: [{ code: "not-positive", path: "product.partMass", says: "0 g", remedy: "more than 0" }],
    shape: false,
  },
  {
    name: "a mass finer than a milligram",
    edits: [["partMass: 42 g", "partMass: ¦42.0004 g"]],
    found: [{ code: "mass-too-fine", path: "product.partMass", says: "42.0004 g", remedy: "`42 g`" }],
    shape: false,
  },
  {
    name: "a share of flash without its base",
    edits: [["flash: 30 % of part", "flash: ¦30 %"]],
    found: [{ code: "share-of-what", path: "product.flash", says: "30 %", remedy: "`30 % of part`" }],
    shape: true,
  },
  {
    name: "flash as a number without its base",
    edits: [["flash: 30 % of part", "flash: ¦0.3"]],
    found: [{ code: "share-of-what", path: "product.flash", says: "0.3", remedy: "`0.3 of part`" }],
  },
  {
    name: "a swell below 100 %",
    edits: [["flash: 30 % of part", "flash: 30 % of part\n  thicknessSwell: ¦2 %"]],
    found: [{ code: "too-small", path: "product.thicknessSwell", says: "2 %", remedy: "at least `100 %`" }],
  },
  {
    name: "a swell as a ratio below 1",
    edits: [["flash: 30 % of part", "flash: 30 % of part\n  thicknessSwell: ¦0.8"]],
    found: [{ code: "too-small", path: "product.thicknessSwell", says: "which is 80 %", remedy: "`1.8`" }],
  },
  {
    name: "a sag in percent without the unit",
    edits: [["flash: 30 % of part", "flash: 30 % of part\n  sagLimit: ¦8"]],
    found: [{ code: "too-large", path: "product.sagLimit", says: "which is 800 %", remedy: "`10 %` or `0.1`" }],
  },
  {
    name: "flash that is the whole shot",
    edits: [["flash: 30 % of part", "flash: ¦100 % of shot"]],
    found: [{ code: "out-of-range", path: "product.flash", says: "next to nothing", remedy: "Check the share" }],
    shape: false,
  },
  {
    name: "a temperature below absolute zero",
    edits: [["material: HDPE", "meltTemperature: ¦-300 °C"]],
    found: [{ code: "out-of-range", path: "product.meltTemperature", says: "absolute zero", remedy: "sign" }],
    shape: false,
  },
  {
    name: "a misspelled key",
    edits: [["shotCapacity", "¦shotCapcity"]],
    found: [{ code: "unknown-key", path: "delivery.shotCapcity", says: "shotCapcity", remedy: "`shotCapacity`" }],
    shape: true,
  },
  {
    name: "a key in the wrong section",
    edits: [["crew: { operators: 1 }", "crew: { operators: 1, ¦replications: 3 }"]],
    found: [{ code: "unknown-key", path: "crew.replications", says: "replications", remedy: "`run`" }],
    shape: true,
  },
  {
    name: "an unknown key",
    edits: [["title:", "¦xylophone: 3\ntitle:"]],
    found: [{ code: "unknown-key", path: "xylophone", says: "xylophone", remedy: "blowcell schema" }],
    shape: true,
  },
  {
    name: "a missing key with a misspelled one in its place",
    edits: [["- name: right\n    cavities: 2", "- ¦name: right\n    ¦cavitys: 2"]],
    found: [
      { code: "missing", path: "stations.right.cavities", says: "`cavities` is missing", remedy: "whole number" },
      { code: "unknown-key", path: "stations.right.cavitys", says: "cavitys", remedy: "`cavities`" },
    ],
    shape: true,
  },
  {
    name: "a missing step",
    edits: [["    steps:\n      close: 0.6 s\n", "    ¦steps:\n"]],
    found: [{ code: "missing", path: "stations.right.steps.close", says: "`close` is missing", remedy: "`7.5 s`" }],
    shape: true,
  },
  {
    name: "a key without a value",
    edits: [["close: 0.6 s", "¦close:"]],
    found: [{ code: "value-missing", path: "stations.right.steps.close", says: "Nothing", remedy: "delete the key" }],
    shape: true,
  },
  {
    name: "an empty section",
    edits: [["crew: { operators: 1 }", "¦crew:"]],
    found: [{ code: "value-missing", path: "crew", says: "Nothing", remedy: "delete the key" }],
    shape: true,
  },
  {
    name: "a plain value in place of a mapping",
    edits: [["wall: { mean: 0.9 mm, thickest: 1.3 mm }", "wall: ¦0.9 mm"]],
    found: [
      {
        code: "wrong-type",
        path: "product.wall",
        says: "a text",
        remedy: "{ mean: 0.9 mm, thickest: 1.3 mm }",
      },
    ],
    shape: true,
  },
  {
    name: "a list in place of a time",
    edits: [["close: 0.6 s", "close: ¦[0.6 s, 0.7 s]"]],
    found: [{ code: "wrong-type", path: "stations.right.steps.close", says: "a list", remedy: "`7.5 s`" }],
    shape: true,
  },
  {
    name: "a title that YAML reads as a number",
    edits: [["title: Two-station cell, 750 ml cleaner bottle", "title: ¦750"]],
    found: [{ code: "wrong-type", path: "title", says: "a number", remedy: '`"750"`' }],
    shape: true,
  },
  {
    name: "a title of blanks",
    edits: [["title: Two-station cell, 750 ml cleaner bottle", 'title: ¦"  "']],
    found: [{ code: "value-missing", path: "title", says: "empty", remedy: "Write" }],
    shape: true,
  },
  {
    name: "half a cavity",
    edits: [["cavities: 2", "cavities: ¦2.5"]],
    found: [{ code: "not-whole", path: "stations.right.cavities", says: "2.5", remedy: "1 to 12" }],
    shape: true,
  },
  {
    name: "too many cavities",
    edits: [["cavities: 2", "cavities: ¦13"]],
    found: [{ code: "out-of-range", path: "stations.right.cavities", says: "13", remedy: "1 to 12" }],
    shape: true,
  },
  {
    name: "no replications",
    edits: [["replications: 20", "replications: ¦0"]],
    found: [{ code: "out-of-range", path: "run.replications", says: "0 is outside", remedy: "1 to 100000" }],
    shape: true,
  },
  {
    name: "a count in words",
    edits: [["cavities: 2", "cavities: ¦two"]],
    found: [{ code: "not-whole", path: "stations.right.cavities", says: "`two`", remedy: "whole number" }],
    shape: true,
  },
  {
    name: "a count in quotes",
    edits: [["cavities: 2", 'cavities: ¦"2"']],
    found: [{ code: "wrong-type", path: "stations.right.cavities", says: "a text", remedy: "`2` without quotes" }],
    shape: true,
  },
  {
    name: "a misspelled dispatch rule",
    edits: [["dispatch: first-ready", "dispatch: ¦first ready"]],
    found: [{ code: "unknown-choice", path: "valve.dispatch", says: "first ready", remedy: "`first-ready`" }],
    shape: true,
  },
  {
    name: "an unknown kind of melt delivery",
    edits: [["kind: reciprocating-screw", "kind: ¦plunger"]],
    found: [{ code: "unknown-choice", path: "delivery.kind", says: "plunger", remedy: "one of `reciprocating-screw`" }],
    shape: true,
  },
  {
    name: "a seed that is a list",
    edits: [["seed: demo", "seed: ¦[demo]"]],
    found: [{ code: "wrong-type", path: "run.seed", says: "a list", remedy: "quotes" }],
    shape: true,
  },
  {
    name: "a newer format",
    edits: [["format: 1", "format: ¦2"]],
    found: [{ code: "format-newer", path: "format", says: "newer", remedy: "newer blowcell" }],
    shape: true,
  },
  {
    name: "an unknown format",
    edits: [["format: 1", "format: ¦0"]],
    found: [{ code: "format-unknown", path: "format", says: "no format 0", remedy: "`format: 1`" }],
    shape: true,
  },
  {
    name: "a format as text",
    edits: [["format: 1", 'format: ¦"1"']],
    found: [{ code: "wrong-type", path: "format", says: "a text", remedy: "`1`" }],
    shape: true,
  },
  {
    name: "a station name with a mark that turns the direction of writing",
    edits: [["- name: right", '- name: ¦"ri\\u202Eght"']],
    found: [
      { code: "name-form", path: "stations.ri\u202Eght.name", says: "cannot be a name", remedy: "marks of direction" },
    ],
    shape: true,
  },
  {
    name: "a station name with a dot, which paths exclude",
    edits: [["- name: right", "- name: ¦right.2"]],
    found: [{ code: "name-form", path: "stations.right.2.name", says: "right.2", remedy: "no dots" }],
    shape: true,
  },
  {
    name: "a station with the name of the valve",
    edits: [["- name: right", "- name: ¦valve"]],
    found: [{ code: "name-reserved", path: "stations.valve.name", says: "valve", remedy: "another name" }],
    shape: true,
  },
  {
    name: "a station with the name of an operator",
    edits: [["- name: right", "- name: ¦operator 1"]],
    found: [{ code: "name-reserved", path: "stations.operator 1.name", says: "operator 1", remedy: "another name" }],
    shape: true,
  },
  {
    name: "a station with the name of a ram",
    edits: [["- name: right", "- name: ¦ram of left"]],
    found: [{ code: "name-reserved", path: "stations.ram of left.name", says: "ram of left", remedy: "another name" }],
    shape: true,
  },
  {
    name: "an extra step with the name of a state",
    edits: [["name: pin up", "name: ¦cooling"]],
    found: [{ code: "name-reserved", path: "stations.left.extra[1].name", says: "cooling", remedy: "another name" }],
    shape: true,
  },
  {
    name: "an empty list of extra steps",
    edits: [
      [
        "    extra:\n      - { after: close, name: pin down, time: 0.3 s }\n      - { after: pin down, name: pin up, time: 0.2 s }",
        "    extra: ¦[]",
      ],
    ],
    found: [{ code: "list-empty", path: "stations.left.extra", says: "empty", remedy: "list of" }],
    shape: true,
  },
  {
    name: "an unknown distribution",
    edits: [["triangular", "¦trianglar"]],
    found: [
      {
        code: "distribution-unknown",
        path: "stations.right.steps.cool.trianglar",
        says: "trianglar",
        remedy: "`triangular`",
      },
    ],
    shape: true,
  },
  {
    name: "two distributions at once",
    edits: [[cool, "cool: ¦{ normal: [7.5 s, 0.3 s], gamma: [7.5 s, 0.3 s] }"]],
    found: [
      { code: "distribution-count", path: "stations.right.steps.cool", says: "2 distributions", remedy: "Keep one" },
    ],
    shape: true,
  },
  {
    name: "a distribution without a name",
    edits: [[cool, "cool: ¦{}"]],
    found: [{ code: "distribution-count", path: "stations.right.steps.cool", says: "no name", remedy: "Keep one" }],
    shape: true,
  },
  {
    name: "a distribution with too few values",
    edits: [["[7.0 s, 7.5 s, 9.0 s]", "¦[7.0 s, 7.5 s]"]],
    found: [
      {
        code: "distribution-length",
        path: "stations.right.steps.cool.triangular",
        says: "takes 3 values, here are 2",
        remedy: "[min, mode, max]",
      },
    ],
    shape: true,
  },
  {
    name: "an empty list of measured values",
    edits: [[cool, "cool: { empirical: ¦[] }"]],
    found: [
      {
        code: "distribution-length",
        path: "stations.right.steps.cool.empirical",
        says: "empty",
        remedy: "measured values",
      },
    ],
    shape: true,
  },
  {
    name: "a triangular distribution with a mode above its maximum",
    edits: [["[7.0 s, 7.5 s, 9.0 s]", "¦[7.0 s, 9.5 s, 9.0 s]"]],
    found: [
      {
        code: "distribution-order",
        path: "stations.right.steps.cool.triangular",
        says: "rise",
        remedy: "smallest first",
      },
    ],
    shape: false,
  },
  {
    name: "a distribution without spread",
    edits: [[cool, "cool: { normal: ¦[7.5 s, 0 s] }"]],
    found: [
      { code: "distribution-spread", path: "stations.right.steps.cool.normal", says: "zero", remedy: "plain quantity" },
    ],
    shape: false,
  },
  {
    name: "mean and standard deviation exchanged",
    edits: [[cool, "cool: { gamma: ¦[0.3 s, 7.5 s] }"]],
    found: [
      {
        code: "distribution-spread",
        path: "stations.right.steps.cool.gamma",
        says: "1.41 times the mean",
        remedy: "mean comes first",
      },
    ],
    shape: false,
  },
  {
    name: "a mean of zero",
    edits: [[cool, "cool: { exponential: ¦0 s }"]],
    found: [
      {
        code: "distribution-spread",
        path: "stations.right.steps.cool.exponential",
        says: "mean is zero",
        remedy: "more than 0",
      },
    ],
    shape: false,
  },
  {
    name: "an unsupported shape",
    edits: [[cool, "cool: { weibull: [7.5 s, ¦40] }"]],
    found: [
      { code: "distribution-shape", path: "stations.right.steps.cool.weibull[1]", says: "40", remedy: "0.5 to 20" },
    ],
    shape: true,
  },
  {
    name: "a shape with a unit",
    edits: [[cool, "cool: { weibull: [7.5 s, ¦2 s] }"]],
    found: [
      { code: "wrong-type", path: "stations.right.steps.cool.weibull[1]", says: "a text", remedy: "plain number" },
    ],
    shape: true,
  },
  {
    name: "a distribution of rates with a time",
    edits: [["plasticatingRate: 110 kg/h", "plasticatingRate: { normal: [110 kg/h, ¦2 s] }"]],
    found: [{ code: "unit-mismatch", path: "delivery.plasticatingRate.normal[1]", says: "a time", remedy: "kg/h" }],
    shape: true,
  },
  {
    name: "a column without its file",
    edits: [[cool, "cool: { ¦empirical: { column: cool_s } }"]],
    found: [
      {
        code: "missing",
        path: "stations.right.steps.cool.empirical.file",
        says: "`file` is missing",
        remedy: "log.csv",
      },
    ],
    shape: true,
  },
  {
    name: "a column with an unknown key",
    edits: [[cool, "cool: { empirical: { file: log.csv, ¦colum: x, column: cool_s } }"]],
    found: [
      { code: "unknown-key", path: "stations.right.steps.cool.empirical.colum", says: "colum", remedy: "`column`" },
    ],
    shape: true,
  },
  {
    name: "several faults at once, in the order of the text",
    edits: [
      ["partMass: 42 g", "partMass: ¦42"],
      ["rechargeStarts: valve-neutral", "rechargeStarts: ¦valve neutral"],
      ["cavities: 2", "cavities: ¦0"],
      ["open: 0.6 s", "open: ¦0,6 s"],
      ["replications: 20", "¦replicatons: 20"],
    ],
    found: [
      { code: "unit-missing", path: "product.partMass", says: "42", remedy: "`42 g`" },
      { code: "unknown-choice", path: "delivery.rechargeStarts", says: "valve neutral", remedy: "`valve-neutral`" },
      { code: "out-of-range", path: "stations.right.cavities", says: "0", remedy: "1 to 12" },
      { code: "decimal-comma", path: "stations.right.steps.open", says: "0,6 s", remedy: "`0.6 s`" },
      { code: "unknown-key", path: "run.replicatons", says: "replicatons", remedy: "`replications`" },
    ],
    shape: true,
  },
];
