// What is wrong with one value, before its place in the text is known.

export interface Fault {
  /** Stable, as in Issue. */
  readonly code: string;
  readonly message: string;
  readonly expected?: string;
  readonly remedy: string;
}
