// The lines of a starter scenario: what is needed, then each further group of keys.
import type { DeliverySpec } from "#scenario/scenario.ts";

export interface StarterOptions {
  readonly stations: number;
  readonly kind: DeliverySpec["kind"];
}

/** YAML; behind ` @` the path of the key whose meaning stands beside the line. */
type StarterLine = string;

/** A group of keys that may be used or not; its lines stay where they are. */
export interface StarterGroup {
  readonly title: string;
  /** Said above its lines. */
  readonly note?: string;
  readonly lines: readonly StarterLine[];
}

/** A group is written as comments, all else as it is. */
export type StarterPart = StarterLine | StarterGroup;

const deliveryOf: Readonly<Record<StarterOptions["kind"], readonly StarterPart[]>> = {
  "reciprocating-screw": [
    "delivery:",
    "  kind: reciprocating-screw @delivery.kind",
    "  recharge: { normal: [3.9 s, 0.1 s] } @delivery.recharge",
    "  drop: 1.2 s @delivery.drop",
    {
      title: "Screw",
      note: "Rates may stand in place of the measured times, once `product.partMass` is given.",
      lines: [
        "  shotCapacity: 0.40 kg @delivery.shotCapacity",
        "  rechargeStarts: valve-neutral @delivery.rechargeStarts",
        "  screwDiameter: 60 mm @delivery.screwDiameter",
        "  drivePower: 45 kW @delivery.drivePower",
        "  holdUp: 2.5 kg @delivery.holdUp",
      ],
    },
    "valve:",
    "  shift: 0.3 s @valve.shift",
    { title: "Dispatch", lines: ["  dispatch: first-ready @valve.dispatch"] },
  ],
  "accumulator-head": [
    "delivery:",
    "  kind: accumulator-head @delivery.kind",
    "  recharge: { normal: [3.9 s, 0.1 s] } @delivery.recharge",
    "  drop: 1.2 s @delivery.drop",
    {
      title: "Screw and accumulator",
      note: "Rates may stand in place of the measured times, once `product.partMass` is given.",
      lines: [
        "  accumulator: per-station @delivery.accumulator",
        "  shotCapacity: 0.40 kg @delivery.shotCapacity",
        "  screwDiameter: 60 mm @delivery.screwDiameter",
        "  drivePower: 45 kW @delivery.drivePower",
        "  holdUp: 2.5 kg @delivery.holdUp",
      ],
    },
    "valve:",
    "  shift: 0.3 s @valve.shift",
    { title: "Dispatch", lines: ["  dispatch: first-ready @valve.dispatch"] },
  ],
  continuous: [
    "delivery:",
    "  kind: continuous @delivery.kind",
    "  recharge: { normal: [3.9 s, 0.1 s] } @delivery.recharge",
    {
      title: "Screw",
      note: "A rate may stand in place of the measured time, once `product.partMass` is given.",
      lines: [
        "  rate: matched @delivery.rate",
        "  dieZone: shared @delivery.dieZone",
        "  screwDiameter: 60 mm @delivery.screwDiameter",
        "  drivePower: 45 kW @delivery.drivePower",
        "  holdUp: 2.5 kg @delivery.holdUp",
      ],
    },
    { title: "Dispatch", lines: ["valve:", "  dispatch: first-ready @valve.dispatch"] },
  ],
};

function stationParts({ stations, kind }: StarterOptions): readonly StarterPart[] {
  const isContinuous = kind === "continuous";
  return [
    "stations:",
    `  count: ${stations} @stations.*.count`,
    "  cavities: 2 @stations.*.cavities",
    "  steps:",
    ...(isContinuous ? ["    travelIn: 0.6 s @stations.*.steps.travelIn"] : []),
    "    close: 0.8 s @stations.*.steps.close",
    ...(isContinuous
      ? ["    cut: 0.2 s @stations.*.steps.cut", "    travelOut: 0.6 s @stations.*.steps.travelOut"]
      : []),
    "    blow: 0.5 s @stations.*.steps.blow",
    "    cool: 7.5 s @stations.*.steps.cool",
    "    vent: 0.5 s @stations.*.steps.vent",
    "    open: 0.8 s @stations.*.steps.open",
    "    remove: { time: { gamma: [0.85 s, 0.2 s] }, by: machine } @stations.*.steps.remove",
    {
      title: "Clearing of a lost shot",
      lines: ["    clear: { time: 90 s, by: machine } @stations.*.steps.clear"],
    },
    {
      title: "Steps of your own",
      lines: ["  extra:", "    - { after: close, name: pin down, time: 0.3 s } @stations.*.extra"],
    },
    {
      title: "Mold, for the process window",
      lines: ["  moldContact: 1000 W/(m² K) @stations.*.moldContact", "  clampForce: 60 kN @stations.*.clampForce"],
    },
  ];
}

function furtherGroups({ stations }: StarterOptions): readonly StarterGroup[] {
  const names = Array.from({ length: stations }, (_, i) => `station ${i + 1}`);
  return [
    {
      title: "Product: masses and material",
      note: "Masses give melt in kg/h and the cost of resin; the material gives the process window.",
      lines: [
        "product:",
        "  material: HDPE @product.material",
        "  partMass: 42 g @product.partMass",
        "  flash: 30 % of part @product.flash",
        "  wall: { mean: 0.7 mm, thickest: 0.85 mm } @product.wall",
        "  length: 220 mm @product.length",
        "  diameter: 85 mm @product.diameter",
        "  volume: 750 mL @product.volume",
        "  blowPressure: 6 bar @product.blowPressure",
        "  die: { diameter: 30 mm, mandrel: 27 mm } @product.die",
      ],
    },
    {
      title: "Operators",
      note: "Then write `by: operator` behind what waits for one, such as `remove`.",
      lines: [
        "crew:",
        "  operators: 1 @crew.operators",
        "  walk: 15 s @crew.walk",
        "  priorities: [removal, repair] @crew.priorities",
      ],
    },
    {
      title: "Machine stops",
      note: "With `step: hold` or `scrap` a stop may lose a shot: then the mold needs `clear` as well.",
      lines: [
        "stops: @stops",
        "  - name: heater band @stops.*.name",
        "    resource: plasticator @stops.*.resource",
        "    between: { exponential: 40 h } @stops.*.between",
        "    repair: 30 min @stops.*.repair",
        "    by: itself @stops.*.by",
        "    step: finish @stops.*.step",
      ],
    },
    {
      title: "Work shifts",
      lines: [
        "calendar:",
        "  from: 2026-03-23 @calendar.from",
        "  at: 06:00 @calendar.at",
        "  shifts: @calendar.shifts",
        "    - { name: early, start: 06:00, end: 14:00, breaks: [{ at: 09:30, time: 15 min }] }",
        "  breaks: run on @calendar.breaks",
      ],
    },
    {
      title: "Start-up",
      note: "`purge: 3 kg` as well, once `product.partMass` is given.",
      lines: [
        "startUp:",
        "  afterOff: 8 h @startUp.afterOff",
        "  heatUp: 2 h @startUp.heatUp",
        "  scrap: 20 cycles @startUp.scrap",
      ],
    },
    {
      title: "Planned changes",
      lines: [
        "changes: @changes",
        "  - { name: other mold, kind: mold, station: station 1, after: 3 h, time: 40 min }",
      ],
    },
    {
      title: "Quality",
      note: "Limits and spreads of mass as well, once `product.partMass` is given, and `maxDemold`, once `product.wall.thickest` is.",
      lines: [
        "quality:",
        "  rejects: 2 % @quality.rejects",
        "maxInMold: 60 s @maxInMold",
        "regrind: { limit: 30 % } @regrind",
      ],
    },
    {
      title: "Takeaway",
      lines: [
        "takeaway: @takeaway",
        "  trimmer:",
        "    time: 1.2 s @takeaway.*.time",
        "    buffer: 20 @takeaway.*.buffer",
        "    rejects: 0.5 % @takeaway.*.rejects",
      ],
    },
    {
      title: "Costs",
      lines: [
        "costs:",
        "  currency: EUR @costs.currency",
        "  resin: 1.40 per kg @costs.resin",
        "  machine: 35 per h @costs.machine",
        "  operator: 28 per h @costs.operator",
        "  tooling: 12 per 1000 parts @costs.tooling",
      ],
    },
    {
      title: "Options for choose",
      note: "`blowcell choose` finds the best of them; prices as well, once `costs` are given.",
      lines: [
        "options: @options",
        "  - name: shorter cooling",
        "    settings: { stations.*.steps.cool: -0.5 s } @options.*.settings",
      ],
    },
    {
      title: "Measured at the real cell",
      note: "The answer compares it with the model.",
      lines: ["measured:", "  shots: 395 per h @measured.shots"],
    },
    {
      title: "An order",
      note: "`promise` gives the chance that it is made in time; with a calendar the due date may be `2026-12-04 14:00`.",
      lines: ["orders: @orders", "  - { quantity: 20000 parts, due: 5 d }"],
    },
    { title: "Order of the stations", lines: [`order: [${names.join(", ")}] @order`] },
    {
      title: "Run",
      lines: [
        "run:",
        "  length: 8 h @run.length",
        "  replications: 20 @run.replications",
        "  seed: demo @run.seed",
        "  warmup: auto @run.warmup",
      ],
    },
  ];
}

/** Everything below the opening lines, in the order of the file. */
export function starterParts(options: StarterOptions): readonly StarterPart[] {
  return [...deliveryOf[options.kind], ...stationParts(options), ...furtherGroups(options)];
}
