// The least that can be called an event simulation of the two-station cell: written by hand for speed alone, the mark to measure against.
import type { DrawnStep, KernelCell, ShotTicks } from "./kernelCell.ts";

const MELT = 0;
const LEFT = 1;
const RIGHT = 2;

/**
 * Three pending times, as valve and plasticator follow each other: melt, left, right; equal ones are up in this order, and whoever
 * waits for a shot is served after all that is up at the same tick. Long, unrolled and with one place that draws where it can be,
 * since calls, arrays and a second place that draws were each measured to be slower.
 */
export function runKernel({ stations: [left, right], toPort, toNeutral, untilTick }: KernelCell): ShotTicks {
  const lastStep = left.steps.length;
  const shots: ShotTicks = [[], []];
  let melt = Infinity;
  let leftDue = Infinity;
  let rightDue = Infinity;
  let leftReady = 0;
  let rightReady = 0;
  let leftAt = 0;
  let rightAt = 0;
  let isFull = true;
  let isShiftingBack = false;
  let served = left;
  let who = MELT;
  let step: DrawnStep;
  for (let now = 0; ;) {
    const mold = leftDue <= rightDue ? leftDue : rightDue;
    const tick = melt <= mold ? melt : mold;
    if (isFull && tick > now && (leftReady <= now || rightReady <= now)) {
      isFull = false;
      step = toPort;
      if (leftReady <= rightReady) {
        leftReady = Infinity;
        leftAt = -1;
        who = LEFT;
      } else {
        rightReady = Infinity;
        rightAt = -1;
        who = RIGHT;
      }
    } else {
      if (tick > untilTick) return shots;
      now = tick;
      if (melt === tick) {
        if (!isShiftingBack) {
          melt = Infinity;
          isFull = true;
          continue;
        }
        isShiftingBack = false;
        step = served.recharge;
        who = MELT;
      } else if (leftDue === tick) {
        if (++leftAt === lastStep) {
          leftDue = Infinity;
          leftReady = now;
          continue;
        }
        step = left.steps[leftAt]!;
        who = LEFT;
        if (leftAt === 1) {
          shots[0].push(now);
          served = left;
          isShiftingBack = true;
          melt = now + toNeutral.sampler.ticks(toNeutral.stream());
        }
      } else {
        if (++rightAt === lastStep) {
          rightDue = Infinity;
          rightReady = now;
          continue;
        }
        step = right.steps[rightAt]!;
        who = RIGHT;
        if (rightAt === 1) {
          shots[1].push(now);
          served = right;
          isShiftingBack = true;
          melt = now + toNeutral.sampler.ticks(toNeutral.stream());
        }
      }
    }
    const end = now + step.sampler.ticks(step.stream());
    if (who === LEFT) leftDue = end;
    else if (who === RIGHT) rightDue = end;
    else melt = end;
  }
}
