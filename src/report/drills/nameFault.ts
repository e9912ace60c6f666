// Drills on faults: a sticking valve, a thick wall, an absent operator or a small screw; which one does the chart show?
import { runOnce } from "#report/lessons/spells.ts";
import type { Drill, ReadCell } from "./drill.ts";
import { choicesBySigns, signs, type Difference } from "./signs.ts";

const faults: readonly Difference[] = [
  { text: "The valve sticks.", set: ["valve.shift={ uniform: [0.9 s, 1.6 s] }"], ...signs.shift },
  { text: "The wall is too thick.", set: ["stations.*.steps.cool=11 s"], ...signs.cooling },
  {
    text: "The operator is absent.",
    set: [`calendar.shifts[0].breaks[0].at="00:01"`],
    ...signs.operator,
  },
  { text: "The screw is too small.", set: ["delivery.recharge={ gamma: [8 s, 0.4 s] }"], ...signs.recharge },
];

const stretch = { from: 45, until: 125 };

export function nameFaultDrills(read: ReadCell): readonly Drill[] {
  const usual = runOnce(read("two-molds.yaml"));
  return faults.flatMap((made) => {
    const changed = runOnce(read("two-molds.yaml", made.set));
    const choices = choicesBySigns(faults, made, [usual, changed], stretch);
    if (choices === undefined) return [];
    const shown = { ...stretch, at: stretch.until };
    return [
      {
        look: "The first chart shows the cell as it usually runs. The second one shows a run with a fault.",
        charts: [
          { title: "As usual", run: usual, ...shown },
          { title: "With a fault", run: changed, ...shown },
        ],
        exercise: { ask: "Which fault is it?", choices },
      },
    ];
  });
}
