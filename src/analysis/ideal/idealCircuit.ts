// A circuit of the ideal cycle, in the words and units of its readers.
import type { StepRole } from "#cell/words/stepNames.ts";

/** What a circuit keeps busy all the way round; what there is one of for each station bears the station's or its own name. */
export type CircuitOwner =
  | { readonly kind: "screw" | "valve" | "chambers" | "die zone" | "crew" | "stations" | "masks" }
  | { readonly kind: "station" | "mask" | "server"; readonly name: string };

export interface CircuitStep {
  readonly resource: string;
  readonly step: string;
  readonly role: StepRole;
}

/** A circuit of steps that wait for each other in a ring; the heaviest one sets the period. */
export interface IdealCircuit {
  readonly name: string;
  /** Null where it leads through several resources. */
  readonly owner: CircuitOwner | null;
  /** Empty for a bound. */
  readonly steps: readonly CircuitStep[];
  readonly resources: readonly string[];
  /** Time of all its steps, and the shots that it delivers in that time. */
  readonly seconds: number;
  readonly shots: number;
  readonly secondsPerShot: number;
  /** Seconds by which its steps may grow before it sets the period. */
  readonly slackSeconds: number;
  readonly critical: boolean;
}

/** Whether the circuit is the screw's, or leads through the screw and other resources. */
export function passesScrew({ owner, steps }: Pick<IdealCircuit, "owner" | "steps">): boolean {
  if (owner) return owner.kind === "screw";
  return steps.some(({ role }) => role === "screw.recharge" || role === "screw.extrude");
}

/** Seconds a shot by which the steps of a circuit may grow before it sets the period; 0 for the critical one. */
export function slackPerShot(circuit: IdealCircuit, ideal: { readonly secondsPerShot: number }): number {
  return circuit.critical ? 0 : Math.max(0, ideal.secondsPerShot - circuit.secondsPerShot);
}
