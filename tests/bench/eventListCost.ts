// The cost of the event list alone, as a linear scan and as a heap, for several sizes.
import path from "node:path";
import { ratioOf, type Figure } from "./figure.ts";
import { runNode, type Places } from "./places.ts";
import { takeTurns } from "./takeTurns.ts";

const sizes = [4, 6, 8, 12, 16, 32];

export function eventListCost({ folder }: Places, rounds: number): readonly Figure[] {
  return sizes.map((entities) => {
    const measure = (kind: string) => (): number =>
      Number(runNode([path.join(folder, "pendingTimes.js"), kind, String(entities)]));
    const { scan, heap } = takeTurns({ scan: measure("scan"), heap: measure("heap") }, rounds);
    return ratioOf(`scan / heap, ${entities} entities`, scan, heap, "event list; above 1 the heap is faster");
  });
}
