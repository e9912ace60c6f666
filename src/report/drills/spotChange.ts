// Drills on two charts with the same random numbers: one thing was changed; which?
import { runOnce } from "#report/lessons/spells.ts";
import type { Drill, ReadCell } from "./drill.ts";
import { choicesBySigns, signs, type Difference } from "./signs.ts";

const changes: readonly Difference[] = [
  { text: "The molds cool for another time.", set: ["stations.*.steps.cool=+30 %"], ...signs.cooling },
  { text: "The clamps close at another speed.", set: ["stations.*.steps.close=+60 %"], ...signs.closing },
  { text: "The screw recharges at another speed.", set: ["delivery.recharge=+40 %"], ...signs.recharge },
  { text: "The valve shifts at another speed.", set: ["valve.shift=0.7 s"], ...signs.shift },
  { text: "The removal takes another time.", set: ["stations.*.steps.remove.time=+50 %"], ...signs.removal },
];

const stretch = { from: 20, until: 60 };

export function spotChangeDrills(read: ReadCell): readonly Drill[] {
  const usual = runOnce(read("two-molds.yaml"));
  return changes.flatMap((made) => {
    const changed = runOnce(read("two-molds.yaml", made.set));
    const choices = choicesBySigns(changes, made, [usual, changed], stretch);
    if (choices === undefined) return [];
    const shown = { ...stretch, at: stretch.until };
    return [
      {
        look: "Both charts are made with the same random numbers. One thing is different in the second one.",
        charts: [
          { title: "Before", run: usual, ...shown },
          { title: "After", run: changed, ...shown },
        ],
        exercise: { ask: "What was changed?", choices },
      },
    ];
  });
}
