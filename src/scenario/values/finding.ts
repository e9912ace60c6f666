// A fault at its path in the scenario, before the path has been looked up in the text.
import type { Fault } from "#foundation/fault.ts";
import type { Place, Severity } from "#foundation/issue.ts";

export type Path = readonly (string | number)[];

export interface Finding extends Fault {
  readonly path: Path;
  /** Point at the key itself, not at its value. */
  readonly at?: "key";
  /** The place in another file, such as a CSV file. */
  readonly place?: Place;
  /** The value as written, where it cannot be read off the path. */
  readonly value?: string;
  /** `error` where absent. */
  readonly severity?: Severity;
  /** `file` where absent. */
  readonly fate?: "file" | "cell";
}
