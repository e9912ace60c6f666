// Continues a process in its code; for functions that the loop calls and that cannot import the loop.
import { clearDue } from "../state/eventList.ts";
import { Process } from "../state/process.ts";
import { Step } from "../state/steps.ts";

type CarryOn = (process: Process, at: usize) => void;

let carryOn: CarryOn | null = null;

/** Who follows the code. */
export function openOnward(follower: CarryOn): void {
  carryOn = follower;
}

/** A process comes to a step. */
export function reach(process: Process, step: Step): void {
  carryOn!(process, step.reachedAt);
}

/** Begins the step for which the process has all that it needs. */
export function begin(process: Process): void {
  clearDue(process);
  carryOn!(process, process.step!.startsAt);
}
