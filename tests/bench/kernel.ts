// A minimal event simulation of the two-station cell, written by hand for speed: the reference of the benchmark.
import type { DrawnStep, KernelCell, ShotTicks } from "./kernelCell.ts";

const MELT = 0;
const LEFT = 1;
const RIGHT = 2;

/**
 * Three pending times, because valve and plasticator alternate: melt, left, right. Equal times are served in this order, and a
 * waiting station is served after all completions of the same tick. The function is long and unrolled, because calls, arrays and
 * a second drawing place were each slower when measured.
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
  let active = MELT;
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
        active = LEFT;
      } else {
        rightReady = Infinity;
        rightAt = -1;
        active = RIGHT;
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
        active = MELT;
      } else if (leftDue === tick) {
        if (++leftAt === lastStep) {
          leftDue = Infinity;
          leftReady = now;
          continue;
        }
        step = left.steps[leftAt]!;
        active = LEFT;
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
        active = RIGHT;
        if (rightAt === 1) {
          shots[1].push(now);
          served = right;
          isShiftingBack = true;
          melt = now + toNeutral.sampler.ticks(toNeutral.stream());
        }
      }
    }
    const end = now + step.sampler.ticks(step.stream());
    if (active === LEFT) leftDue = end;
    else if (active === RIGHT) rightDue = end;
    else melt = end;
  }
}
