// Keys and values that the format knows but that nothing computes yet: a scenario that uses one is refused by name.
import type { Finding } from "./finding.ts";
import { pathsOf, valueAt } from "./pathPattern.ts";

interface LaterPart {
  /** `*` stands for any station. */
  readonly path: string;
  /** Only these values; any where absent. */
  readonly values?: readonly string[];
  readonly instead: string;
}

/** The whole list: building something means deleting its line here. */
export const notBuilt: readonly LaterPart[] = [{ path: "delivery.meltRise", instead: "Delete the key." }];

export function findNotBuilt(content: unknown): readonly Finding[] {
  return notBuilt.flatMap(({ path, values, instead }) =>
    pathsOf(content, path)
      .filter((found) => {
        const value = valueAt(content, found);
        return value !== undefined && (values === undefined || values.some((each) => each === value));
      })
      .map((found): Finding => {
        const what =
          values === undefined ? `\`${found.at(-1)}\`` : `\`${found.at(-1)}: ${String(valueAt(content, found))}\``;
        return { code: "not-built-yet", message: `${what} is not built yet.`, remedy: instead, path: found, at: "key" };
      }),
  );
}
