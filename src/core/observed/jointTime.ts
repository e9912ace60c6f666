// The time that several resources spend together in one class of states after another: at each instant in the lowest that any of them is in.

/** Ticks in each class since the observation began; up to date after `settleJoint`. */
export let jointTicks = new StaticArray<f64>(0);
/** How many resources are in each class now. */
let present = new StaticArray<i32>(0);
let lowestNow = 0;
let since: f64 = 0;

/** Classes are small numbers; then each resource is added with its first one. */
export function openJoint(classes: i32): void {
  jointTicks = new StaticArray<f64>(classes);
  present = new StaticArray<i32>(classes);
}

export function addJoint(first: i32): void {
  unchecked((present[first] = present[first] + 1));
  lowestNow = lowest();
}

/** A resource leaves one class for another. */
export function moveJoint(before: i32, after: i32, tick: f64): void {
  unchecked((present[before] = present[before] - 1));
  unchecked((present[after] = present[after] + 1));
  if (after < lowestNow) change(after, tick);
  else if (before === lowestNow && unchecked(present[before]) === 0) change(lowest(), tick);
}

export function settleJoint(tick: f64): void {
  unchecked((jointTicks[lowestNow] = jointTicks[lowestNow] + (tick - since)));
  since = tick;
}

export function restartJoint(tick: f64): void {
  jointTicks.fill(0);
  since = tick;
}

function change(to: i32, tick: f64): void {
  settleJoint(tick);
  lowestNow = to;
}

function lowest(): i32 {
  for (let each = 0; each < present.length; each++) if (unchecked(present[each]) > 0) return each;
  return 0;
}
