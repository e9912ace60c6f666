// A circuit of the ideal cycle, in the words and units of its readers.

/** A circuit of steps that wait for each other in a ring; the heaviest one sets the period. */
export interface IdealCircuit {
  readonly name: string;
  readonly steps: readonly string[];
  readonly resources: readonly string[];
  /** Time of all its steps, and the shots that it delivers in that time. */
  readonly seconds: number;
  readonly shots: number;
  readonly secondsPerShot: number;
  /** Seconds by which its steps may grow before it sets the period. */
  readonly slackSeconds: number;
  readonly critical: boolean;
}

/** Seconds a shot by which the steps of a circuit may grow before it sets the period; 0 for the critical one. */
export function slackPerShot(circuit: IdealCircuit, ideal: { readonly secondsPerShot: number }): number {
  return circuit.critical ? 0 : Math.max(0, ideal.secondsPerShot - circuit.secondsPerShot);
}
