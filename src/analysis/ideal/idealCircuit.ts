// A circuit of the ideal cycle with its name, its resource and its times in seconds.
import type { StepRole } from "#cell/words/stepNames.ts";

/** The resource that a circuit keeps busy all the time; stations, masks and servers have names. */
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

/** Whether the circuit belongs to the screw, or passes the screw and other resources. */
export function passesScrew({ owner, steps }: Pick<IdealCircuit, "owner" | "steps">): boolean {
  if (owner) return owner.kind === "screw";
  return steps.some(({ role }) => role === "screw.recharge" || role === "screw.extrude");
}

/** Only a fixed order has a slack: where the order of service varies, a longer step also changes the order. */
export function hasSlack({ method }: { readonly method: "fixed order" | "order found by running" | "bound" }): boolean {
  return method === "fixed order";
}

/** Seconds a shot by which the steps of a circuit may grow before it sets the period; 0 for the critical one. */
export function slackPerShot(circuit: IdealCircuit, ideal: { readonly secondsPerShot: number }): number {
  return circuit.critical ? 0 : Math.max(0, ideal.secondsPerShot - circuit.secondsPerShot);
}
