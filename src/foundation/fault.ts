// What is wrong with one value, said before anyone knows where in a text it stands.

export interface Fault {
  /** Stable, as in Issue. */
  readonly code: string;
  readonly message: string;
  readonly expected?: string;
  readonly remedy: string;
}
