// What is wrong with one value, before its place in the text is known.

export interface Fault {
  /** Stable, as in Issue. */
  readonly code: string;
  readonly message: string;
  readonly expected?: string;
  readonly remedy: string;
}

/** Whether reading gave a fault in place of a value. */
export function isFault(read: object): read is Fault {
  return "code" in read && "remedy" in read;
}
