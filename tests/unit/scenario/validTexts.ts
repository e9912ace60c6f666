// Valid scenarios that together use all keys that the tests of reading need.

/** A typical scenario with two stations; all values are invented. */
export const twoStations = `# $schema: ./scenario.schema.json
# Do two stations keep the screw busy?
format: 1
title: Two-station cell, 750 ml cleaner bottle
product:
  material: HDPE
  partMass: 42 g
  flash: 30 % of part
  wall: { mean: 0.9 mm, thickest: 1.3 mm }
delivery:
  kind: reciprocating-screw
  plasticatingRate: 110 kg/h
  deliveryRate: 420 kg/h
  shotCapacity: 0.40 kg
  rechargeStarts: valve-neutral
valve: { shift: 0.30 s, dispatch: first-ready }
stations:
  - name: right
    cavities: 2
    steps:
      close: 0.6 s
      blow: 0.5 s
      cool: { triangular: [7.0 s, 7.5 s, 9.0 s] }
      vent: 0.5 s
      open: 0.6 s
      remove: { time: 0.8 s, by: machine }
  - name: left
    cavities: 2
    steps:
      close: 0.6 s
      blow: 0.5 s
      cool: { triangular: [7.0 s, 7.5 s, 9.0 s] }
      vent: 0.5 s
      open: 0.6 s
      remove: { time: 0.8 s, by: operator }
    extra:
      - { after: close, name: pin down, time: 0.3 s }
      - { after: pin down, name: pin up, time: 0.2 s }
crew: { operators: 1 }
run: { length: 8 h, replications: 20, seed: demo }
`;

/** The shortest valid scenario: stations by count, measured times, all other keys assumed. */
export const shortest = `format: 1
product: { partMass: 42 g }
delivery: { kind: reciprocating-screw, recharge: 3.9 s, drop: 1.2 s }
valve: { shift: 0.3 s }
stations:
  count: 2
  cavities: 1
  steps: { close: 0.6 s, blow: 0.5 s, cool: 7.5 s, vent: 0.5 s, open: 0.6 s, remove: { time: 0.8 s } }
`;

/** Every kind of distribution, several products, a station's own delivery, an order, US units. */
export const everything = `format: 1
products:
  small: { partMass: 1.5 oz, flash: 25 % of shot }
  large: { partMass: 60 g, flash: 18 g, material: { name: HDPE, meltDensity: 760 kg/m³, conductivity: 0.25 W/(m K), dieViscosity: 2200 Pa s, powerLawIndex: 45 %, fractureStress: 0.2 MPa }, coolingTo: mean, insideAir: { transfer: 30 W/(m² K), temperature: 18 °C } }
delivery:
  kind: reciprocating-screw
  plasticatingRate: { gamma: [240 lb/h, 5 lb/h] }
  drop: { weibull: [1.2 s, 8] }
  rechargeStarts: mold-closed
  screw: { channelDepth: 4 mm, helixAngle: 17.7 deg, meteringLength: 400 mm, speed: 60 rpm, backPressure: 80 bar, viscosity: 900 Pa s }
  shotFor: next
valve: { shift: { uniform: [0.2 s, 0.3 s] }, dispatch: alternate }
order: [top, side 2, side 1]
stations:
  - count: 2
    name: side
    cavities: 2
    product: small
    steps:
      close: { normal: [0.6 s, 0.05 s] }
      blow: { lognormal: [0.5 s, 0.1 s] }
      cool: { empirical: [7.1 s, 7.4 s, 8 s] }
      vent: { exponential: 0.5 s }
      open: { uniform: [0.6 s, 0.6 s] }
      remove: { time: { triangular: [0.7 s, 0.8 s, 1 s] } }
  - name: top
    cavities: 1
    product: large
    priority: 2
    delivery: { recharge: 4 s, deliveryRate: 400 kg/h }
    steps:
      close: 0.6 s
      blow: 0.5 s
      cool: { empirical: { file: log.csv, column: cool_s } }
      vent: 0.5 s
      open: 0.6 s
      remove: { time: 0.8 s }
run: { length: 2 d, replications: 5, seed: 7, warmup: 30 min, start: cold }
`;

export const log = "shot,cool_s,rate\r\n1,7.5,110 kg/h\r\n2,7.25 s,\r\n3,8,112 kg/h\r\n";

export const validTexts: readonly (readonly [name: string, text: string])[] = [
  ["two stations", twoStations],
  ["shortest", shortest],
  ["everything", everything],
  [
    "JSON",
    JSON.stringify({
      $schema: "./scenario.schema.json",
      format: 1,
      product: { partMass: "42 g" },
      delivery: { kind: "reciprocating-screw", recharge: "3.9 s", drop: "1.2 s" },
      valve: { shift: "0.3 s" },
      stations: [
        {
          cavities: 1,
          steps: {
            close: "0.6 s",
            blow: "0.5 s",
            cool: "7.5 s",
            vent: "0.5 s",
            open: "0.6 s",
            remove: "0.8 s",
          },
        },
      ],
    }),
  ],
];
