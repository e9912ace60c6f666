// The words for what happens to parts after the mold: ways of the operators, steps with which a part leaves, reasons of rejects.
import type { ServerSpec } from "#scenario/scenario.ts";

/** The step with which an operator comes to the named step. */
export const walkTo = (step: string): string => `walk to ${step}`;
export const isWalk = (step: string): boolean => step.startsWith("walk to ");

/** Steps with which one part leaves a resource, as an event log tells them. */
export const HAND_OVER = "hand over ";
export const PASS_ON = "pass on";
export const REFUSE = "refuse";
export const partLeaves = (step: string): boolean => step.startsWith(HAND_OVER) || step === PASS_ON || step === REFUSE;

/** Why a part is refused that waited for too long. */
export const tooOldFor = (server: string): string => `too old for ${server}`;

/** What a server may refuse parts for. */
export function reasonsOf({ name, rejects, reason = name, maxAge }: ServerSpec): readonly string[] {
  return [...(rejects > 0 ? [reason] : []), ...(maxAge === undefined ? [] : [tooOldFor(name)])];
}
