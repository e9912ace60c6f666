// Faults between keys that are well-formed on their own; each is an edit of the two-station scenario.
import type { FaultySpec } from "./faultySpec.ts";

export const faultyCells: readonly FaultySpec[] = [
  {
    name: "a shot above the capacity of the screw, once for each station",
    edits: [
      ["shotCapacity: 0.40 kg", "shotCapacity: 0.10 kg"],
      ["cavities: 2", "cavities: ¦4"],
      ["cavities: 2", "cavities: ¦2"],
    ],
    found: [
      {
        code: "shot-above-capacity",
        path: "stations.right.cavities",
        says: "4 × 54.6 g = 218.4 g is above the shot capacity of 100 g",
        remedy: "at most 1 cavity",
        fate: "cell",
      },
      {
        code: "shot-above-capacity",
        path: "stations.left.cavities",
        says: "109.2 g",
        remedy: "`109.2 g`",
        fate: "cell",
      },
    ],
    shape: false,
  },
  {
    name: "a mold that opens under pressure",
    edits: [["vent: 0.5 s", "vent: ¦0 s"]],
    found: [
      {
        code: "vent-zero",
        path: "stations.right.steps.vent",
        says: "under blow pressure",
        remedy: "`0.5 s`",
        fate: "cell",
      },
    ],
    shape: false,
  },
  {
    name: "removal by operator without operators",
    edits: [
      ["by: operator", "by: ¦operator"],
      ["crew: { operators: 1 }", "crew: { operators: 0 }"],
    ],
    found: [
      {
        code: "operator-missing",
        path: "stations.left.steps.remove.by",
        says: "there is none",
        remedy: "operators: 1",
        fate: "cell",
      },
    ],
    shape: false,
  },
  {
    name: "a rate and a measured time of the same step",
    edits: [["plasticatingRate: 110 kg/h", "plasticatingRate: 110 kg/h\n  ¦recharge: 3.9 s"]],
    found: [
      {
        code: "rate-and-time",
        path: "delivery.recharge",
        says: "Both",
        remedy: "Delete `plasticatingRate` or `recharge`",
      },
    ],
    shape: false,
  },
  {
    name: "a station's own rate and its own time",
    edits: [["- name: right", "- delivery: { deliveryRate: 400 kg/h, ¦drop: 1 s }\n    name: right"]],
    found: [
      {
        code: "rate-and-time",
        path: "stations.right.delivery.drop",
        says: "Both",
        remedy: "Delete `deliveryRate` or `drop`",
      },
    ],
    shape: false,
  },
  {
    name: "neither a rate nor a time",
    edits: [
      ["delivery:", "¦delivery:"],
      ["  plasticatingRate: 110 kg/h\n", ""],
    ],
    found: [
      {
        code: "missing",
        path: "delivery.plasticatingRate",
        says: "Neither `plasticatingRate` nor `recharge`",
        remedy: "`recharge: 3.9 s`",
      },
    ],
    shape: false,
  },
  {
    name: "no valve",
    edits: [
      ["# $schema", "¦# $schema"],
      ["valve: { shift: 0.30 s, dispatch: first-ready }\n", ""],
    ],
    found: [{ code: "missing", path: "valve", says: "`valve` is missing", remedy: "`shift: 0 s`" }],
    shape: false,
  },
  {
    name: "no product",
    edits: [
      ["# $schema", "¦# $schema"],
      [
        "product:\n  material: HDPE\n  partMass: 42 g\n  flash: 30 % of part\n  wall: { mean: 0.9 mm, thickest: 1.3 mm }\n",
        "",
      ],
    ],
    found: [{ code: "missing", path: "product", says: "`product` is missing", remedy: "partMass: 42 g" }],
    shape: false,
  },
  {
    name: "product and products",
    edits: [
      ["delivery:", "¦products: { a: { partMass: 3 g } }\ndelivery:"],
      ["- name: right", "- product: a\n    name: right"],
      ["- name: left", "- product: a\n    name: left"],
    ],
    found: [{ code: "product-and-products", path: "products", says: "Both", remedy: "Move" }],
    shape: false,
  },
  {
    name: "several products and a station without a product",
    edits: [
      [
        "product:\n  material: HDPE\n  partMass: 42 g\n  flash: 30 % of part\n  wall: { mean: 0.9 mm, thickest: 1.3 mm }",
        "products: { a: { partMass: 3 g, flash: 0 g }, b: { partMass: 4 g, flash: 0 g } }",
      ],
      ["- name: right", "- ¦name: right"],
      ["- name: left", "- product: ¦c\n    name: left"],
    ],
    found: [
      { code: "product-which", path: "stations.right.product", says: "not said", remedy: "`product: a`" },
      { code: "product-unknown", path: "stations.left.product", says: '"c"', remedy: "`a`, `b`" },
    ],
    shape: false,
  },
  {
    name: "two stations of the same name",
    edits: [["- name: left", "- name: ¦right"]],
    found: [{ code: "station-twice", path: "stations[1].name", says: '"right"', remedy: "Rename" }],
    shape: false,
  },
  {
    name: "a name that `count` also makes",
    edits: [
      ["- name: right", "- name: side\n    count: 2"],
      ["- name: left", "- name: ¦side 2"],
    ],
    found: [{ code: "station-twice", path: "stations.side 2.name", says: '"side 2"', remedy: "Rename" }],
    shape: false,
  },
  {
    name: "too many stations in one entry",
    edits: [["- name: right", "- name: right\n    count: ¦17"]],
    found: [{ code: "too-many-stations", path: "stations.right.count", says: "17", remedy: "1 to 16" }],
    shape: true,
  },
  {
    name: "too many stations in all",
    edits: [
      ["stations:", "¦stations:"],
      ["- name: right", "- name: right\n    count: 16"],
    ],
    found: [{ code: "too-many-stations", path: "stations", says: "17 stations", remedy: "Take some out" }],
    shape: false,
  },
  {
    name: "an order with a missing, a repeated and an unknown station",
    edits: [["stations:", "¦order: [right, ¦right, ¦lefd]\nstations:"]],
    found: [
      { code: "order-incomplete", path: "order", says: "leaves out left", remedy: "Add left" },
      { code: "order-twice", path: "order[1]", says: '"right"', remedy: "Keep one" },
      { code: "order-unknown", path: "order[2]", says: '"lefd"', remedy: "`left`" },
    ],
    shape: false,
  },
  {
    name: "a shot for the next station without a fixed order",
    edits: [["rechargeStarts: valve-neutral", "shotFor: ¦next"]],
    found: [{ code: "next-unknown", path: "delivery.shotFor", says: "cannot know", remedy: "`dispatch: alternate`" }],
    shape: false,
  },
  {
    name: "a warm-up as long as the run",
    edits: [["seed: demo", "seed: demo, warmup: ¦480 min"]],
    found: [{ code: "warmup-too-long", path: "run.warmup", says: "whole run", remedy: "longer" }],
    shape: false,
  },
  {
    name: "an extra step after an unknown step",
    edits: [["after: pin down", "after: ¦pin dwn"]],
    found: [{ code: "extra-after", path: "stations.left.extra[1].after", says: '"pin dwn"', remedy: "`pin down`" }],
    shape: false,
  },
  {
    name: "an extra step after one that is listed later",
    edits: [["after: close, name: pin down", "after: ¦pin up, name: pin down"]],
    found: [{ code: "extra-after", path: "stations.left.extra[0].after", says: '"pin up"', remedy: "listed before" }],
    shape: false,
  },
  {
    name: "two extra steps of the same name",
    edits: [["name: pin up", "name: ¦pin down"]],
    found: [{ code: "extra-twice", path: "stations.left.extra[1].name", says: '"pin down"', remedy: "Rename" }],
    shape: false,
  },
  {
    name: "priorities without effect",
    edits: [
      ["dispatch: first-ready", "dispatch: ¦first-ready"],
      ["cavities: 2", "cavities: 2\n    priority: 2"],
    ],
    found: [
      {
        code: "priority-unused",
        path: "valve.dispatch",
        says: "priority",
        remedy: "`dispatch: priority`",
        severity: "hint",
      },
    ],
    shape: false,
  },
  {
    name: "the old word for a dispatch rule",
    edits: [["dispatch: first-ready", "dispatch: ¦longest-waiting"]],
    found: [
      {
        code: "old-word",
        path: "valve.dispatch",
        says: "`longest-waiting`",
        remedy: "`longest-since-drop`",
        severity: "hint",
      },
    ],
    shape: true,
  },
  {
    name: "a wall and a mold contact too small to calculate with",
    edits: [
      ["thickest: 1.3 mm", "thickest: ¦1e-9 mm"],
      ["cavities: 2\n", "cavities: 2\n    moldContact: ¦0.5 W/(m² K)\n"],
    ],
    found: [
      { code: "too-small", path: "product.wall.thickest", says: "1e-9 mm is too small", remedy: "the unit" },
      { code: "too-small", path: "stations.right.moldContact", says: "0.5 W/(m² K) is too small", remedy: "the unit" },
    ],
    shape: false,
  },
  {
    name: "a mold temperature above the demold temperature",
    edits: [["flash: 30 % of part", "flash: 30 % of part\n  moldTemperature: ¦70 °C"]],
    found: [
      {
        code: "values-contradict",
        path: "product.moldTemperature",
        says: "70 °C is not below the material's `demoldTemperature` of 65 °C",
        remedy: "Check both",
      },
    ],
    shape: false,
  },
  {
    name: "a melt temperature equal to the demold temperature",
    edits: [["flash: 30 % of part", "flash: 30 % of part\n  meltTemperature: ¦65 °C"]],
    found: [{ code: "values-contradict", path: "product.meltTemperature", says: "65 °C", remedy: "Check both" }],
    shape: false,
  },
  {
    name: "inside air above the demold temperature",
    edits: [
      ["flash: 30 % of part", "flash: 30 % of part\n  insideAir: { transfer: 30 W/(m² K), temperature: ¦70 °C }"],
    ],
    found: [
      {
        code: "values-contradict",
        path: "product.insideAir.temperature",
        says: "`insideAir.temperature` of 70 °C is not below the material's `demoldTemperature`",
        remedy: "Check both",
      },
    ],
    shape: false,
  },
  {
    name: "a user's own demold temperature below the mold temperature",
    edits: [["material: HDPE", "material: ¦{ name: HDPE, demoldTemperature: 8 °C }"]],
    found: [
      { code: "values-contradict", path: "product.material", says: "`moldTemperature` of 10 °C", remedy: "Check both" },
    ],
    shape: false,
  },
  {
    name: "a mandrel as large as its bushing, and a mean wall above the thickest place",
    edits: [
      [
        "mean: 0.9 mm, thickest: 1.3 mm }",
        "mean: 1.4 mm, thickest: ¦1.3 mm }\n  die: { mandrel: 30 mm, diameter: ¦30 mm }",
      ],
    ],
    found: [
      { code: "values-contradict", path: "product.wall.thickest", says: "1.4 mm is not below", remedy: "Check both" },
      { code: "values-contradict", path: "product.die.diameter", says: "30 mm is not below", remedy: "Check both" },
    ],
    shape: false,
  },
  {
    name: "a gap that leaves no mandrel",
    edits: [["flash: 30 % of part", "flash: 30 % of part\n  die: { diameter: ¦20 mm, gap: 11 mm }"]],
    found: [
      {
        code: "values-contradict",
        path: "product.die.diameter",
        says: "Twice `die.gap` of 22 mm",
        remedy: "Check both",
      },
    ],
    shape: false,
  },
  {
    name: "a vent pressure equal to the blow pressure",
    edits: [["flash: 30 % of part", "flash: 30 % of part\n  ventTo: 6 bar\n  blowPressure: ¦6 bar"]],
    found: [
      { code: "values-contradict", path: "product.blowPressure", says: "`ventTo` of 6 bar", remedy: "Check both" },
    ],
    shape: false,
  },
  {
    name: "no vent after an estimated blow",
    edits: [
      ["blow: 0.5 s", "blow: estimate"],
      ["vent: 0.5 s", "vent: ¦0 s"],
    ],
    found: [
      {
        code: "vent-zero",
        path: "stations.right.steps.vent",
        says: "under blow pressure",
        remedy: "`0.5 s`",
        fate: "cell",
      },
    ],
    shape: false,
  },
  {
    name: "rates without flash",
    edits: [
      ["product:", "¦product:"],
      ["  flash: 30 % of part\n", ""],
    ],
    found: [
      { code: "flash-assumed", path: "product.flash", says: "too small", remedy: "`flash: 0 g`", severity: "hint" },
    ],
    shape: false,
  },
  {
    name: "no format",
    edits: [
      ["# $schema", "¦# $schema"],
      ["format: 1\n", ""],
    ],
    found: [{ code: "format-missing", path: "format", says: "1 is assumed", remedy: "`format: 1`", severity: "hint" }],
    shape: false,
  },
  {
    name: "faults between keys together with faults of keys",
    edits: [
      ["partMass: 42 g", "¦partMas: 42 g"],
      ["product:", "¦product:"],
      ["vent: 0.5 s", "vent: ¦0 s"],
      ["name: pin up", "name: ¦pin down"],
      ["replications: 20", "replications: ¦many"],
    ],
    found: [
      { code: "missing", path: "product.partMass", says: "`partMass` is missing", remedy: "`partMass: 42 g`" },
      { code: "unknown-key", path: "product.partMas", says: "partMas", remedy: "`partMass`" },
      {
        code: "vent-zero",
        path: "stations.right.steps.vent",
        says: "under blow pressure",
        remedy: "`0.5 s`",
        fate: "cell",
      },
      { code: "extra-twice", path: "stations.left.extra[1].name", says: '"pin down"', remedy: "Rename" },
      { code: "not-whole", path: "run.replications", says: "is not a whole number", remedy: "whole number" },
    ],
    shape: true,
  },
];
