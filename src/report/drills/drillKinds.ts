// The kinds of drills, in the order of the list.
import type { DrillKind } from "./drill.ts";
import { halfSecondDrills } from "./halfSecond.ts";
import { nameFaultDrills } from "./nameFault.ts";
import { nextDropDrills } from "./nextDrop.ts";
import { nextWaitDrills } from "./nextWait.ts";
import { shotFullDrills } from "./shotFull.ts";
import { spotChangeDrills } from "./spotChange.ts";

export const drillKinds: readonly DrillKind[] = [
  { name: "next drop", title: "Which mold gets the next drop?", make: nextDropDrills },
  { name: "next wait", title: "Who waits next, and for what?", make: nextWaitDrills },
  { name: "shot full", title: "Will the shot be full before the mold opens?", make: shotFullDrills },
  { name: "half a second", title: "Where is half a second worth most?", make: halfSecondDrills },
  { name: "spot the change", title: "Two charts: what was changed?", make: spotChangeDrills },
  { name: "fault", title: "Which fault does the chart show?", make: nameFaultDrills },
];
