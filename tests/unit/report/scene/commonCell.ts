// A cell with one accumulator before the valve, which holds more than one shot.
export const commonText = `format: 1
product: { partMass: 40 g, flash: 25 % of part }
delivery:
  kind: accumulator-head
  accumulator: common
  plasticatingRate: { normal: [100 kg/h, 3 kg/h] }
  deliveryRate: { normal: [360 kg/h, 8 kg/h] }
  shotCapacity: 160 g
valve: { shift: 0.25 s }
stations:
  - name: left
    cavities: 2
    steps: { close: 0.6 s, blow: 0.5 s, cool: 6 s, vent: 0.5 s, open: 0.6 s, remove: { time: 0.8 s } }
  - name: right
    cavities: 1
    steps: { close: 0.6 s, blow: 0.5 s, cool: 8 s, vent: 0.5 s, open: 0.6 s, remove: { time: 0.8 s } }
run: { length: 2 h, replications: 1, seed: common, warmup: 10 min }
`;
