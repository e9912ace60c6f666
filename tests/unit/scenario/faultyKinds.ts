// Keys of one kind of melt delivery in a cell of another kind; each is an edit of the two-station scenario.
import type { FaultySpec } from "./faultySpec.ts";

const kind = "kind: reciprocating-screw";
const oneKindOnly = (key: string, kinds: string) =>
  ({ code: "other-kind", path: key, says: "has no meaning", remedy: "delivery.kind", kinds }) as const;
const without = ({ code, path, says, remedy }: ReturnType<typeof oneKindOnly>) => ({ code, path, says, remedy });

const travel = "      travelIn: 0.7 s\n      cut: 0.1 s\n      travelOut: 0.7 s\n      close: 0.6 s\n      blow";

/** Changes the two stations to continuous extrusion, which is valid except for its valve. */
const continuous: FaultySpec["edits"] = [
  [kind, "kind: continuous"],
  ["  deliveryRate: 420 kg/h\n  shotCapacity: 0.40 kg\n  rechargeStarts: valve-neutral\n", ""],
  ["      close: 0.6 s\n      blow", travel],
  ["    steps:\n      close: 0.6 s\n      blow", `    steps:\n${travel}`],
];

export const faultyKinds: readonly FaultySpec[] = [
  {
    name: "an accumulator head with `rechargeStarts`",
    edits: [
      [kind, "kind: accumulator-head"],
      ["rechargeStarts: valve-neutral", "¦rechargeStarts: valve-neutral"],
    ],
    found: [without(oneKindOnly("delivery.rechargeStarts", "reciprocating-screw"))],
    shape: false,
  },
  {
    name: "a common accumulator without a capacity",
    edits: [
      [`delivery:\n  ${kind}`, "¦delivery:\n  kind: accumulator-head\n  accumulator: common"],
      ["  shotCapacity: 0.40 kg\n", ""],
      ["  rechargeStarts: valve-neutral\n", ""],
    ],
    found: [
      {
        code: "missing",
        path: "delivery.shotCapacity",
        says: "`shotCapacity` is missing",
        remedy: "shotCapacity: 1.2 kg",
      },
    ],
    shape: false,
  },
  {
    name: "a screw faster than the ram of a common accumulator, once for each station",
    edits: [
      [kind, "kind: accumulator-head\n  accumulator: common"],
      ["plasticatingRate: 110 kg/h", "plasticatingRate: 500 kg/h"],
      ["  rechargeStarts: valve-neutral\n", ""],
      ["right\n    cavities: 2", "right\n    cavities: ¦2"],
      ["left\n    cavities: 2", "left\n    cavities: ¦2"],
    ],
    found: ["right", "left"].map((station) => ({
      code: "values-contradict" as const,
      path: `stations.${station}.cavities`,
      says: "faster than the ram",
      remedy: "a slip",
    })),
    shape: false,
  },
  {
    name: "a reciprocating screw with a fixed rate and mold travel",
    edits: [
      [kind, `${kind}\n  ¦rate: fixed`],
      ["      close: 0.6 s", "      ¦travelIn: 0.7 s\n      close: 0.6 s"],
    ],
    found: [
      without(oneKindOnly("delivery.rate", "continuous")),
      without(oneKindOnly("stations.right.steps.travelIn", "continuous")),
    ],
    shape: false,
  },
  {
    name: "continuous extrusion with a valve, a ram, and molds without travel",
    edits: [
      [kind, "kind: continuous"],
      [
        "  deliveryRate: 420 kg/h\n  shotCapacity: 0.40 kg\n  rechargeStarts: valve-neutral\n",
        "  ¦deliveryRate: 420 kg/h\n",
      ],
      ["valve: { shift", "valve: { ¦shift"],
      [
        "    steps:\n      close: 0.6 s",
        "    ¦steps:\n      close: 0.6 s\n      travelIn: 0.7 s\n      travelOut: 0.7 s",
      ],
      [
        "left\n    cavities: 2\n    steps:\n      close: 0.6 s",
        "left\n    cavities: 2\n    steps:\n      close: 0.6 s\n      travelIn: 0.7 s\n      cut: 0.1 s\n      travelOut: 0.7 s",
      ],
    ],
    found: [
      without(oneKindOnly("delivery.deliveryRate", "")),
      { code: "other-kind", path: "valve.shift", says: "has no valve", remedy: "Delete" },
      { code: "missing", path: "stations.right.steps.cut", says: "`cut` is missing", remedy: "`cut: 0.8 s`" },
    ],
    shape: false,
  },
  {
    name: "a valve without a shift time",
    edits: [["valve: { shift: 0.30 s, dispatch: first-ready }", "¦valve: { dispatch: first-ready }"]],
    found: [{ code: "missing", path: "valve.shift", says: "`shift` is missing", remedy: "`shift: 0.3 s`" }],
    shape: false,
  },
  {
    name: "continuous extrusion of different parisons without a fixed order",
    edits: [
      ...continuous,
      ["valve: { shift: 0.30 s, dispatch: first-ready }\nstations", "¦stations"],
      ["cavities: 2", "cavities: 3"],
    ],
    found: [{ code: "next-unknown", path: "stations", says: "different parisons", remedy: "dispatch: alternate" }],
    shape: false,
  },
  {
    name: "a matched screw with its slowest rate above its full rate",
    edits: [
      ...continuous,
      ["valve: { shift: 0.30 s,", "valve: {"],
      ["kind: continuous", "kind: continuous\n  rateRange: { min: ¦120 kg/h }"],
    ],
    found: [
      { code: "values-contradict", path: "delivery.rateRange.min", says: "120 kg/h is above", remedy: "Check both" },
    ],
    shape: false,
  },
  {
    name: "a reciprocating screw with `stopsScrewAfter`, and a wrong time",
    edits: [["kind: reciprocating-screw", "kind: reciprocating-screw\n  ¦stopsScrewAfter: ¦soon"]],
    found: [
      { code: "other-kind", path: "delivery.stopsScrewAfter", says: "no meaning", remedy: "Delete" },
      { code: "not-a-number", path: "delivery.stopsScrewAfter", says: "soon", remedy: "" },
    ],
    shape: true,
  },
  {
    name: "a reciprocating screw with `dieZone`, and a choice that does not exist",
    edits: [["kind: reciprocating-screw", "kind: reciprocating-screw\n  ¦dieZone: ¦open"]],
    found: [
      { code: "other-kind", path: "delivery.dieZone", says: "no meaning", remedy: "Delete" },
      { code: "unknown-choice", path: "delivery.dieZone", says: "open", remedy: "" },
    ],
    shape: true,
  },
  {
    name: "a fixed rate with a range",
    edits: [
      ...continuous,
      ["valve: { shift: 0.30 s,", "valve: {"],
      ["kind: continuous", "kind: continuous\n  rate: fixed\n  ¦rateRange: { min: 50 kg/h }"],
    ],
    found: [
      {
        code: "range-unused",
        path: "delivery.rateRange",
        says: "its range is not used",
        remedy: "rate: matched",
        severity: "hint",
      },
    ],
    shape: false,
  },
];
